using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The liquids that a blend becomes as vapor leaves it, and what is in equilibrium with each of them at any temperature. Used while a <see cref="GlideTable"/> is made.
/// </summary>
/// <remarks>
/// Rayleigh's equation dx_i/ds = x_i − y_i, mass fractions x of the liquid and y of the vapor over it, s = −ln of the liquid that is left (Rayleigh, Philos. Mag. 4, 521, 1902), at one
/// temperature, by midpoint steps: how volatile components are in relation to each other changes little with temperature.
/// </remarks>
internal sealed class GlideLine
{
    /// <summary>K: about what a pool boils at.</summary>
    private const double Typical = 270;

    /// <summary>Largest step of s.</summary>
    private const double LargestStep = 0.15;

    /// <summary>Mole fraction below which a component does not fall.</summary>
    private const double Trace = 1e-9;

    private readonly IncipientPhase _point;
    private readonly double[] _molarMass;
    private readonly double[] _liquid;
    private readonly double[] _start;
    private readonly double[] _vaporDensities;
    private readonly double[] _direction;
    private double _liquidDensity;

    public GlideLine(MixtureModel model)
    {
        MixtureEngine engine = model.Engine;
        int n = engine.Equation.Count;
        _molarMass = new double[n];
        for (int i = 0; i < n; i++)
        {
            _molarMass[i] = engine.Equation.Components[i].Data.MolarMass;
        }

        _liquid = (double[])engine.Composition.Clone();
        _start = new double[n];
        _vaporDensities = new double[n];
        _direction = new double[n];
        _point = new IncipientPhase(engine.Equation, _liquid);
        Home = Math.Max(engine.Curves.MinimumTemperature, Math.Min(Typical, 0.8 * engine.Curves.MaximumTemperature));
        SaturationPoint both = model.SaturationAtTemperature(Home);
        _liquidDensity = both.Bubble.Density / model.MolarMass;
        double vapor = engine.Curves.Bubble.Split(Home, _vaporDensities);
        for (int i = 0; i < n; i++)
        {
            _vaporDensities[i] = vapor * _liquid[i] * Math.Exp(_vaporDensities[i]);
        }

        IsAtHome = Settle();
    }

    /// <summary>K: where the line is drawn.</summary>
    public double Home { get; }

    /// <summary>Whether the last liquid's equilibrium was found at <see cref="Home"/>.</summary>
    public bool IsAtHome { get; private set; }

    /// <summary>Molar mass of the vapor, kg/mol.</summary>
    public double VaporMolarMass => MolarMass(_point.Incipient.X);

    /// <summary>How far the vapor of the last equilibrium is from the liquid, along the way from one to the other at <see cref="Home"/>: no unit that counts.</summary>
    public double Away
    {
        get
        {
            double sum = 0;
            double liquid = MolarMass(_point.Bulk.X);
            double vapor = MolarMass(_point.Incipient.X);
            for (int i = 0; i < _direction.Length; i++)
            {
                sum += _direction[i] * (MassFraction(_point.Bulk.X, i, liquid) - MassFraction(_point.Incipient.X, i, vapor));
            }

            return sum;
        }
    }

    /// <summary>Liquid of another s; false where no equilibrium is found on the way.</summary>
    public bool MoveBy(double s)
    {
        int steps = (int)Math.Ceiling(s / LargestStep);
        double h = s / Math.Max(1, steps);
        for (int k = 0; k < steps && IsAtHome; k++)
        {
            _liquid.CopyTo(_start, 0);
            Step(0.5 * h);
            IsAtHome = Settle();
            if (IsAtHome)
            {
                Step(h);
                IsAtHome = Settle();
            }
        }

        return IsAtHome;
    }

    /// <summary>Mass fractions of liquid and vapor at <see cref="Home"/>.</summary>
    public void Compositions(double[] liquid, double[] vapor)
    {
        ToMass(_liquid, liquid);
        ToMass(_point.Incipient.X, vapor);
    }

    /// <summary>Equilibrium of the liquid at a temperature, from the last one; false where there is none.</summary>
    public bool At(double temperature, out GlidePoint at)
    {
        at = default;
        if (!_point.MoveTo(temperature))
        {
            return false;
        }

        MixturePhase liquid = _point.Bulk;
        MixturePhase vapor = _point.Incipient;
        liquid.SetIdealGas();
        vapor.SetIdealGas();
        double liquidMass = MolarMass(liquid.X);
        double vaporMass = MolarMass(vapor.X);
        at.Pressure = _point.Pressure;
        at.LiquidVolume = 1 / (liquid.Rho * liquidMass);
        at.VaporVolume = 1 / (vapor.Rho * vaporMass);
        at.LiquidEnergy = liquid.Energy / liquidMass;
        at.VaporEnergy = vapor.Energy / vaporMass;
        return true;
    }

    /// <summary>Back to <see cref="Home"/>.</summary>
    public void Return() => IsAtHome = Settle();

    /// <summary>Liquid at the start of the step, moved by what the vapor of the last equilibrium takes.</summary>
    private void Step(double h)
    {
        double[] y = _point.Incipient.X;
        double vaporMass = MolarMass(y);
        double startMass = MolarMass(_start);
        double nowMass = MolarMass(_liquid);
        double sum = 0;
        var next = new double[_liquid.Length];
        for (int i = 0; i < next.Length; i++)
        {
            double slope = MassFraction(_liquid, i, nowMass) - MassFraction(y, i, vaporMass);
            next[i] = Math.Max(Trace, (MassFraction(_start, i, startMass) + (h * slope)) / _molarMass[i]);
            sum += next[i];
        }

        for (int i = 0; i < next.Length; i++)
        {
            next[i] /= sum;
            _vaporDensities[i] = _point.Incipient.Rho * y[i] * next[i] / _liquid[i];
        }

        next.CopyTo(_liquid, 0);
    }

    private bool Settle()
    {
        _point.SetBulk(_liquid);
        if (!_point.Start(Home, _liquidDensity, _vaporDensities))
        {
            return false;
        }

        _liquidDensity = _point.Bulk.Rho;
        double liquid = MolarMass(_liquid);
        double vapor = MolarMass(_point.Incipient.X);
        for (int i = 0; i < _vaporDensities.Length; i++)
        {
            _direction[i] = MassFraction(_liquid, i, liquid) - MassFraction(_point.Incipient.X, i, vapor);
            _vaporDensities[i] = _point.Incipient.Rho * _point.Incipient.X[i];
        }

        return true;
    }

    private double MolarMass(double[] moles)
    {
        double sum = 0;
        for (int i = 0; i < moles.Length; i++)
        {
            sum += moles[i] * _molarMass[i];
        }

        return sum;
    }

    private double MassFraction(double[] moles, int component, double whole) => moles[component] * _molarMass[component] / whole;

    private void ToMass(double[] moles, double[] mass)
    {
        double whole = MolarMass(moles);
        for (int i = 0; i < moles.Length; i++)
        {
            mass[i] = MassFraction(moles, i, whole);
        }
    }
}

using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// Whether phases are on the outer branches of their isotherms: the liquid on that which only rises from it, the vapor on that which only rises to it. Several
/// published equations have loops between the phases with a stretch that is stable by itself. Looking takes as long as a solution, so it is done anew only where
/// phases have moved on from where they passed.
/// </summary>
internal sealed class BranchCheck
{
    /// <summary>
    /// Steps in which a liquid's isotherm is looked at beyond its density, and at least how far: loops are wider than the steps, and far beyond
    /// the liquid some equations fail.
    /// </summary>
    private const double LoopStep = 1.055;

    private const double Denser = 1.3;

    /// <summary>Up to this share of the critical temperature isotherms may have loops.</summary>
    private const double LoopShare = 1.1;

    /// <summary>Where a vapor's isotherm is looked at below its density.</summary>
    private static readonly double[] Thinner = [0.9, 0.7, 0.4];

    private readonly MixtureEngine _engine;
    private readonly double _bulkReducingDensity;
    private readonly Passed _liquid;
    private readonly Passed _vapor;

    public BranchCheck(MixtureEngine engine)
    {
        _engine = engine;
        _liquid = new Passed(engine.Equation.Count, reach: 0.02);
        _vapor = new Passed(engine.Equation.Count, reach: 0.1);
        var bulk = new MixturePhase(engine.Equation);
        bulk.SetComposition(engine.Composition);
        _bulkReducingDensity = bulk.ReducingDensity;
    }

    /// <summary>Whether a liquid is one of the physics.</summary>
    public bool IsLiquid(MixturePhase phase) => _liquid.IsNear(phase) || (IsOnLiquidBranch(phase) && _liquid.Keep(phase));

    /// <summary>Whether a vapor is one of the physics.</summary>
    public bool IsVapor(MixturePhase phase) => _vapor.IsNear(phase) || (IsOnVaporBranch(phase) && _vapor.Keep(phase));

    /// <summary>A little more than the reduced density of the bulk's saturated liquid.</summary>
    public double ReducedLiquid(double temperature)
    {
        const double margin = 1.08;
        double t = Math.Max(_engine.Curves.MinimumTemperature, Math.Min(_engine.Curves.MaximumTemperature, temperature));
        return margin * _engine.Curves.Bubble.At(t).Density / (_engine.MolarMass * _bulkReducingDensity);
    }

    private bool IsOnLiquidBranch(MixturePhase phase)
    {
        double densest = Math.Max(ReducedLiquid(phase.T) * phase.ReducingDensity, Denser * phase.Rho);
        double pressure = phase.Pressure;
        for (double density = LoopStep * phase.Rho; density < densest; density *= LoopStep)
        {
            double next = phase.PressureAt(density, out double slope);
            if (!(next > pressure) || !(slope > 0))
            {
                return false;
            }

            pressure = next;
        }

        return true;
    }

    private bool IsOnVaporBranch(MixturePhase phase)
    {
        if (phase.T > LoopShare * _engine.Critical.Temperature)
        {
            return true;
        }

        foreach (double factor in Thinner)
        {
            _ = phase.PressureAt(factor * phase.Rho, out double slope);
            if (!(slope > 0))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A phase that passed.</summary>
    private sealed class Passed(int count, double reach)
    {
        /// <summary>How far the logarithm of the temperature and mole fractions may move.</summary>
        private const double TemperatureReach = 0.01, FractionReach = 0.02;

        private readonly double[] _fractions = new double[count];
        private double _density;
        private double _temperature;

        public bool IsNear(MixturePhase phase)
        {
            if (!(Math.Abs(phase.T - _temperature) < TemperatureReach * _temperature && Math.Abs(phase.Rho - _density) < reach * _density))
            {
                return false;
            }

            for (int i = 0; i < _fractions.Length; i++)
            {
                if (Math.Abs(phase.X[i] - _fractions[i]) > FractionReach)
                {
                    return false;
                }
            }

            return true;
        }

        public bool Keep(MixturePhase phase)
        {
            phase.X.CopyTo(_fractions, 0);
            _density = phase.Rho;
            _temperature = phase.T;
            return true;
        }
    }
}

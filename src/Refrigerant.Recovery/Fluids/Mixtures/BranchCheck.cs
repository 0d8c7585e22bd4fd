using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// Whether the phases of a <see cref="PhaseSplit"/> are on the outer branches of their isotherms, which takes as long as the solution itself: looked at anew
/// only where they have moved on from where it was found.
/// </summary>
internal sealed class BranchCheck
{
    /// <summary>How far the logarithms of liquid density, vapor density and temperature, and mole fractions, may move.</summary>
    private const double LiquidReach = 0.02, VaporReach = 0.1, TemperatureReach = 0.01, FractionReach = 0.02;

    private readonly MixtureEngine _engine;
    private readonly double _bulkReducingDensity;
    private readonly double[] _liquid;
    private readonly double[] _vapor;
    private double _liquidDensity;
    private double _vaporDensity;
    private double _temperature;

    public BranchCheck(MixtureEngine engine)
    {
        _engine = engine;
        _liquid = new double[engine.Equation.Count];
        _vapor = new double[engine.Equation.Count];
        var bulk = new MixturePhase(engine.Equation);
        bulk.SetComposition(engine.Composition);
        _bulkReducingDensity = bulk.ReducingDensity;
    }

    /// <summary>Whether the solution is one of the physics.</summary>
    public bool Passes(PhaseSplit split)
    {
        if (IsNear(split))
        {
            return true;
        }

        if (!split.IsOnOuterBranches(ReducedLiquid(split.Temperature)))
        {
            return false;
        }

        split.Liquid.X.CopyTo(_liquid, 0);
        split.Vapor.X.CopyTo(_vapor, 0);
        _liquidDensity = split.Liquid.Rho;
        _vaporDensity = split.Vapor.Rho;
        _temperature = split.Temperature;
        return true;
    }

    /// <summary>A little more than the reduced density of the bulk's saturated liquid.</summary>
    public double ReducedLiquid(double temperature)
    {
        const double margin = 1.08;
        double t = Math.Max(_engine.Curves.MinimumTemperature, Math.Min(_engine.Curves.MaximumTemperature, temperature));
        return margin * _engine.Curves.Bubble.At(t).Density / (_engine.MolarMass * _bulkReducingDensity);
    }

    private bool IsNear(PhaseSplit split)
    {
        if (!(Math.Abs(split.Temperature - _temperature) < TemperatureReach * _temperature
            && Math.Abs(split.Liquid.Rho - _liquidDensity) < LiquidReach * _liquidDensity
            && Math.Abs(split.Vapor.Rho - _vaporDensity) < VaporReach * _vaporDensity))
        {
            return false;
        }

        for (int i = 0; i < _liquid.Length; i++)
        {
            if (Math.Abs(split.Liquid.X[i] - _liquid[i]) > FractionReach || Math.Abs(split.Vapor.X[i] - _vapor[i]) > FractionReach)
            {
                return false;
            }
        }

        return true;
    }
}

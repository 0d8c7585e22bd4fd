using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Flow;

/// <summary>Hoses and fittings in series, reduced to what the flow equations need; plain SI doubles, immutable.</summary>
/// <remarks>
/// Every loss is carried as R = K/A² in 1/m⁴, so that parts of different bore add up: Δp = R·ṁ²/(2ρ). The line has one entrance
/// (K = 0.5, sharp-edged) and one exit (K = 1) besides what its hoses list (Crane TP-410, from memory). Fittings with a flow coefficient are
/// throttles: friction like the rest to liquid; to vapor they stand at the inlet, one after the other, and the pipe behind them.
/// </remarks>
internal sealed class Line
{
    private const double EntranceLoss = 0.5;
    private const double ExitLoss = 1;

    private readonly double[] _lengthResistance;
    private readonly double[] _reynoldsPerFlow;
    private readonly double[] _relativeRoughness;
    private readonly double _fixedResistance;
    private readonly double _pipeResistance;
    private readonly double[] _throttleArea;
    private readonly double[] _throttleRatio;
    private readonly double[] _throttleRecovery;

    public Line(IReadOnlyList<Hose> hoses)
    {
        int n = hoses.Count;
        _lengthResistance = new double[n];
        _reynoldsPerFlow = new double[n];
        _relativeRoughness = new double[n];
        MinimumArea = double.PositiveInfinity;
        double fixedResistance = EntranceLoss / (hoses[0].Area * hoses[0].Area);
        double rise = 0;
        double throttled = 0;
        var areas = new List<double>();
        var ratios = new List<double>();
        var recoveries = new List<double>();
        for (int i = 0; i < n; i++)
        {
            Hose hose = hoses[i];
            double area = hose.Area;
            double diameter = hose.InnerDiameter.Meters;
            _lengthResistance[i] = hose.Length.Meters / diameter / (area * area);
            _reynoldsPerFlow[i] = 4 / (Math.PI * diameter);
            _relativeRoughness[i] = Math.Min(1, hose.Roughness.Meters / diameter);
            foreach (Fitting fitting in hose.Fittings)
            {
                fixedResistance += fitting.Resistance;
                if (fitting.FlowArea > 0)
                {
                    throttled += fitting.Resistance;
                    areas.Add(fitting.FlowArea);
                    ratios.Add(fitting.PressureDifferentialRatioFactor);
                    recoveries.Add(fitting.LiquidPressureRecoveryFactor);
                }
            }

            rise += hose.Rise.Meters;
            MinimumArea = Math.Min(MinimumArea, area);
            Volume += hose.InternalVolume.CubicMeters;
        }

        Rise = rise;
        double last = hoses[n - 1].Area;
        _fixedResistance = fixedResistance + (ExitLoss / (last * last));
        _pipeResistance = _fixedResistance - throttled;
        _throttleArea = [.. areas];
        _throttleRatio = [.. ratios];
        _throttleRecovery = [.. recoveries];
    }

    /// <summary>Smallest cross-section of its hoses, m².</summary>
    public double MinimumArea { get; }

    /// <summary>Height of the outlet above the inlet, m.</summary>
    public double Rise { get; }

    /// <summary>Internal volume, m³.</summary>
    public double Volume { get; }

    /// <summary>Number of fittings that are throttles to vapor.</summary>
    public int ThrottleCount => _throttleArea.Length;

    /// <summary>Av of a throttle, m².</summary>
    public double ThrottleArea(int throttle) => _throttleArea[throttle];

    /// <summary>x_T of a throttle.</summary>
    public double ThrottleRatio(int throttle) => _throttleRatio[throttle];

    /// <summary>F_L of a throttle.</summary>
    public double ThrottleRecovery(int throttle) => _throttleRecovery[throttle];

    /// <summary>R of what is no throttle, 1/m⁴.</summary>
    public double PipeResistance(double massFlow, double viscosity) => _pipeResistance + Friction(massFlow, viscosity);

    /// <summary>R of the whole line at a mass flow (kg/s) and a dynamic viscosity (Pa·s), 1/m⁴.</summary>
    public double Resistance(double massFlow, double viscosity) => _fixedResistance + Friction(massFlow, viscosity);

    /// <summary>K of what is no throttle, referred to <see cref="MinimumArea"/>.</summary>
    public double PipeLoss(double massFlow, double viscosity) => PipeResistance(massFlow, viscosity) * MinimumArea * MinimumArea;

    /// <summary>Reynolds number in the narrowest hose at a mass flow.</summary>
    public double LargestReynolds(double massFlow, double viscosity)
    {
        double largest = 0;
        for (int i = 0; i < _reynoldsPerFlow.Length; i++)
        {
            largest = Math.Max(largest, _reynoldsPerFlow[i] * massFlow / viscosity);
        }

        return largest;
    }

    private double Friction(double massFlow, double viscosity)
    {
        double resistance = 0;
        for (int i = 0; i < _lengthResistance.Length; i++)
        {
            resistance += HoseResistance(i, massFlow, viscosity);
        }

        return resistance;
    }

    private double HoseResistance(int i, double massFlow, double viscosity)
    {
        // At rest the friction factor diverges as 64/Re but the drop does not: the bound keeps 0·∞ away.
        double reynolds = Math.Max(_reynoldsPerFlow[i] * massFlow / viscosity, 1e-9);
        return Flow.Friction.Churchill(reynolds, _relativeRoughness[i]) * _lengthResistance[i];
    }
}

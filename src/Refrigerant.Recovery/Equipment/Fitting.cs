using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Equipment;

/// <summary>A valve, coupler or core depressor in a line, as a pressure loss. Immutable.</summary>
/// <remarks>
/// Pressure drop = R·(mass flow)²/(2·density) with R = K/A², A the area that the loss coefficient K refers to. From a flow
/// coefficient: Q[US gal/min] = Cv·√(Δp[psi]/specific gravity), so R = 2/Av² with Av = 24.0e-6 m²·Cv (Crane TP-410, from memory;
/// the factor computed from the definition of the units and water at 60 °F, 999.0 kg/m³). One with a flow coefficient is a throttle: vapor
/// chokes in it as IEC 60534-2-1 has it.
/// </remarks>
public sealed record Fitting
{
    /// <summary>Av in m² of a fitting with Cv = 1: (3.785411784e-3/60 m³/s)·√(999.0 kg/m³/6894.757 Pa).</summary>
    private const double AreaPerFlowCoefficient = 2.4015e-5;

    /// <summary>A full-bore ball valve: K = 3·f_T with f_T ≈ 0.03 for small bores, rounded up (Crane TP-410, from memory).</summary>
    private const double BallValveLoss = 0.1;

    /// <summary>A quarter-turn low-loss coupler: common practice, no source.</summary>
    private const double CouplerLoss = 1.0;

    /// <summary>
    /// Cv of an access valve with its spring-loaded core held open by a depressor: a tenth of that of its open port of 5 mm bore, as the trade press has
    /// it, which also has the job take twice as long (common practice, no source).
    /// </summary>
    private const double CoreFlowCoefficient = 0.1;

    /// <summary>x_T of a globe valve with a contoured plug, flow to open (IEC 60534-2-1, table of typical values, from memory).</summary>
    private const double GlobeDifferentialRatio = 0.72;

    /// <summary>F_L of the same (IEC 60534-2-1, table of typical values, from memory).</summary>
    private const double GlobeRecovery = 0.9;

    private Fitting(string name, double resistance, double flowArea = 0, bool isCore = false)
    {
        Name = name;
        Resistance = resistance;
        FlowArea = flowArea;
        IsCore = isCore;
    }

    /// <summary>What it is.</summary>
    public string Name { get; }

    /// <summary>Whether it is a valve core, which can be removed.</summary>
    public bool IsCore { get; }

    /// <summary>
    /// Pressure differential ratio factor x_T of IEC 60534-2-1, 0.1 to 0.99: gas chokes at a drop of x_T·κ/1.4 of the inlet pressure. 0.72, a globe
    /// valve (from memory), by default, for a core too. It counts for a fitting with a flow coefficient.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double PressureDifferentialRatioFactor { get; init => field = Require.InRange(value, 0.1, 0.99, string.Empty, nameof(PressureDifferentialRatioFactor)); } = GlobeDifferentialRatio;

    /// <summary>
    /// Liquid pressure recovery factor F_L of IEC 60534-2-1, 0.1 to 1: liquid flashes in its throat at a drop of F_L² of that to the vapor pressure.
    /// 0.90, a globe valve (from memory), by default, for a core too. It counts for a fitting with a flow coefficient.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double LiquidPressureRecoveryFactor { get; init => field = Require.InRange(value, 0.1, 1, string.Empty, nameof(LiquidPressureRecoveryFactor)); } = GlobeRecovery;

    /// <summary>R = K/A², 1/m⁴.</summary>
    internal double Resistance { get; }

    /// <summary>Av, m², of a throttle: mass flow = Av·√(ρ·Δp) of liquid; zero of a fitting that is friction only.</summary>
    internal double FlowArea { get; }

    /// <summary>Flow coefficient Cv of a throttle as it was given; zero of a fitting that is friction only.</summary>
    internal double FlowCoefficient { get; private init; }

    /// <summary>Loss coefficient K of a fitting that is friction only, as it was given.</summary>
    internal double LossCoefficient { get; private init; }

    /// <summary>The inner diameter that the loss coefficient refers to.</summary>
    internal Length Diameter { get; private init; }

    /// <summary>A fitting of a known loss coefficient.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="lossCoefficient">K, 0 or more, referred to the velocity in <paramref name="diameter"/>.</param>
    /// <param name="diameter">The inner diameter that K refers to, greater than zero.</param>
    /// <exception cref="ArgumentNullException">The name is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static Fitting FromLossCoefficient(string name, double lossCoefficient, Length diameter)
    {
        _ = Require.NotEmpty(name, nameof(name));
        Require.InRange(lossCoefficient, 0, 1e6, string.Empty, nameof(lossCoefficient));
        Require.InRange(diameter.Meters, 1e-4, 1, "m", nameof(diameter));
        Length held = Held.Millimeters(diameter);
        double d = held.Meters;
        double area = 0.25 * Math.PI * d * d;
        return new Fitting(name, lossCoefficient / (area * area)) { LossCoefficient = lossCoefficient, Diameter = held };
    }

    /// <summary>A fitting of a known flow coefficient.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="flowCoefficient">Cv: US gallons of water a minute at a drop of 1 psi; from 0.001 to 10 000. Kv = 0.865·Cv.</param>
    /// <param name="pressureDifferentialRatioFactor">See <see cref="PressureDifferentialRatioFactor"/>.</param>
    /// <param name="liquidPressureRecoveryFactor">See <see cref="LiquidPressureRecoveryFactor"/>.</param>
    /// <exception cref="ArgumentNullException">The name is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static Fitting FromFlowCoefficient(
        string name,
        double flowCoefficient,
        double pressureDifferentialRatioFactor = GlobeDifferentialRatio,
        double liquidPressureRecoveryFactor = GlobeRecovery)
    {
        _ = Require.NotEmpty(name, nameof(name));
        Require.InRange(flowCoefficient, 1e-3, 1e4, string.Empty, nameof(flowCoefficient));
        return Throttle(name, flowCoefficient) with
        {
            PressureDifferentialRatioFactor = pressureDifferentialRatioFactor,
            LiquidPressureRecoveryFactor = liquidPressureRecoveryFactor,
        };
    }

    /// <summary>A throttle of any flow coefficient greater than zero.</summary>
    internal static Fitting Throttle(string name, double flowCoefficient)
    {
        double area = AreaPerFlowCoefficient * flowCoefficient;
        return new Fitting(name, 2 / (area * area), area) { FlowCoefficient = flowCoefficient };
    }

    /// <summary>An open full-bore ball valve.</summary>
    /// <param name="diameter">Its bore, from 0.1 mm to 1 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bore is outside its range.</exception>
    public static Fitting BallValve(Length diameter) => FromLossCoefficient("ball valve", BallValveLoss, diameter);

    /// <summary>A low-loss coupler.</summary>
    /// <param name="diameter">Its bore, from 0.1 mm to 1 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bore is outside its range.</exception>
    public static Fitting Coupler(Length diameter) => FromLossCoefficient("coupler", CouplerLoss, diameter);

    /// <summary>An access valve with its core in place, held open by a depressor (an estimate: Cv = 0.1).</summary>
    public static Fitting CoreDepressor()
    {
        Fitting valve = FromFlowCoefficient("access valve", CoreFlowCoefficient);
        return new Fitting("access valve with core", valve.Resistance, valve.FlowArea, isCore: true) { FlowCoefficient = valve.FlowCoefficient };
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}

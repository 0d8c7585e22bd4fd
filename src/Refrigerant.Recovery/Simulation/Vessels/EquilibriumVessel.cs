using System;
using Refrigerant.Recovery.Simulation.Contents;

namespace Refrigerant.Recovery.Simulation.Vessels;

/// <summary>A rigid vessel whose refrigerant is at one temperature and pressure: an appliance or a part of it, a cylinder, the inside of a machine.</summary>
/// <remarks>
/// Foreign gas fills what liquid leaves and adds its pressure (Dalton's law): p = p_refrigerant + n·R·T/(V·(1 − λ)).
/// </remarks>
internal sealed class EquilibriumVessel : Vessel
{
    /// <summary>Molar gas constant, J/(mol·K) (SI definition).</summary>
    public const double GasConstant = 8.31446261815324;

    /// <summary>Smallest share of the volume that gas is taken to fill, so that its pressure stays finite.</summary>
    private const double SmallestGasShare = 1e-3;

    private double _pressure;

    public EquilibriumVessel(string name, Content content, double volume, Shell? shell = null, OilSump? oil = null, double[]? asCharged = null)
        : base(name, content.Components)
    {
        Content = content;
        Volume = volume;
        Shell = shell;
        Oil = oil;
        AsCharged = asCharged ?? [];
    }

    public Content Content { get; }

    /// <summary>m³.</summary>
    public double Volume { get; }

    public Shell? Shell { get; }

    public OilSump? Oil { get; }

    /// <summary>Air and other foreign gas in it, mol.</summary>
    public double GasMoles { get; init; }

    /// <summary>Heat that reaches the refrigerant other than through a shell, W; constant.</summary>
    public double ConstantHeat { get; init; }

    public override double Pressure => _pressure;

    public override double Temperature => Content.Temperature;

    public override double VaporDensity => Content.VaporDensity;

    public override double VaporEnthalpy => Content.VaporEnthalpy;

    public override double LiquidEnthalpy => Content.LiquidEnthalpy;

    public override ReadOnlySpan<double> VaporComposition => Content.VaporComposition;

    public override ReadOnlySpan<double> LiquidComposition => Content.LiquidComposition;

    public override double Mass => Content.Mass;

    public override double LiquidMass => Content.LiquidMass;

    /// <summary>Mass fractions as charged, of what oil gives off; empty where the composition is not followed.</summary>
    private double[] AsCharged { get; }

    public override void AddStates(SlotLayout layout)
    {
        base.AddStates(layout);
        Shell?.AddStates(layout, Name);
        Oil?.AddStates(layout, Name);
    }

    public override void SetScales(double[] scale)
    {
        base.SetScales(scale);
        Shell?.SetScales(scale);
        Oil?.SetScales(scale, MassScale);
    }

    public override bool Solve(double[] state, in SimulationInputs inputs)
    {
        if (!Content.Solve(state, First, Volume, state[Energy]))
        {
            return false;
        }

        _pressure = Content.Pressure;
        if (GasMoles > 0)
        {
            _pressure += GasMoles * GasConstant * Content.Temperature / (Volume * Math.Max(SmallestGasShare, 1 - Content.LiquidVolumeFraction));
        }

        return (Shell is null || Shell.Solve(state, Content.Temperature, Content.Temperature, Content.LiquidVolumeFraction, inputs))
            && (Oil is null || Oil.Solve(state, Content.Pressure, Shell?.DryTemperature ?? Content.Temperature, inputs));
    }

    public override void Derive(double[] derivatives)
    {
        double heat = ConstantHeat;
        double outside = ConstantHeat;
        if (Shell is Shell shell)
        {
            heat += shell.HeatToLiquid + shell.HeatToVapor;
            outside += shell.HeatFromOutside;
            shell.Derive(derivatives);
        }

        if (Oil is OilSump oil)
        {
            outside += oil.HeatFromOutside;
            oil.Derive(derivatives);
            if (Shell is null || !Shell.TakeHeat(derivatives, oil.HeatFromAround))
            {
                heat -= oil.HeatFromAround;
            }

            Give(derivatives, oil.Release, oil.ReleaseEnthalpy, AsCharged);
        }

        derivatives[Energy] += heat;
        derivatives[OutsideHeat] += outside;
    }

    public override double TotalMass(double[] state) => SumOfMasses(state) + (Oil?.Dissolved(state) ?? 0);

    public override double ComponentMass(double[] state, int component) => state[First + component]
        + (Oil is null ? 0 : (Components == 1 ? 1 : AsCharged[component]) * Oil.Dissolved(state));

    public override double Stored(double[] state) => state[Energy] + (Shell?.Stored(state) ?? 0) + (Oil?.Stored(state) ?? 0);
}

using System.Runtime.InteropServices;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>The header's <c>rr_fluid_facts</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal readonly struct FluidFacts(PropertyModel model)
{
    public readonly double MolarMass = model.MolarMass;
    public readonly double CriticalTemperature = model.CriticalTemperature;
    public readonly double CriticalPressure = model.CriticalPressure;
    public readonly double CriticalDensity = model.CriticalDensity;
    public readonly double MinimumTemperature = model.Range.MinimumTemperature;
    public readonly double MaximumTemperature = model.Range.MaximumTemperature;
    public readonly double MaximumPressure = model.Range.MaximumPressure;
    public readonly double MaximumSaturationTemperature = model.Range.MaximumSaturationTemperature;
}

/// <summary>The header's <c>rr_state</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal readonly struct State(in StatePoint point)
{
    public readonly double Temperature = point.Temperature;
    public readonly double Pressure = point.Pressure;
    public readonly double Density = point.Density;
    public readonly double Enthalpy = point.Enthalpy;
    public readonly double Entropy = point.Entropy;
    public readonly double VaporFraction = point.VaporFraction;
    public readonly int Phase = (int)point.Phase;
    public readonly int Reserved = 0;
}

/// <summary>The header's <c>rr_saturation</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal readonly struct Saturation(in SaturationPoint point)
{
    public readonly State Bubble = new(point.Bubble);
    public readonly State Dew = new(point.Dew);
}

/// <summary>The header's <c>rr_vessel</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal readonly struct Vessel(in VesselPoint point)
{
    public readonly State Bulk = new(point.Bulk);
    public readonly State Liquid = new(point.Liquid);
    public readonly State Vapor = new(point.Vapor);
    public readonly double LiquidVolumeFraction = point.LiquidVolumeFraction;
}

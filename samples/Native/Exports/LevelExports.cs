using System;
using System.Runtime.InteropServices;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>The air around the gauge, and the level to reach.</summary>
internal static unsafe class LevelExports
{
    [UnmanagedCallersOnly(EntryPoint = "rr_air_pressure")]
    public static Status AirPressure(double elevation, double* pressure)
    {
        try
        {
            Errors.Deref(pressure, nameof(pressure)) = Barometer.AtElevation(Length.FromMeters(elevation)).Pressure.Pascals;
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_required_level")]
    public static Status RequiredLevel(int fluid, double charge, double elevation, Level* level, byte* text, int textSize)
    {
        try
        {
            ref Level result = ref Errors.Deref(level, nameof(level));
            var requirement = EvacuationRequirement.For(
                FluidHandles.Get(fluid),
                Mass.FromKilograms(charge),
                new EvacuationOptions { Barometer = Barometer.AtElevation(Length.FromMeters(elevation)) });
            int cautions = Text.WriteWithCautions(requirement.Rule.Rule, requirement.Findings, text, textSize);
            result = new Level(requirement, cautions);
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    /// <summary>The header's <c>rr_level</c>.</summary>
    [StructLayout(LayoutKind.Sequential)]
    internal readonly struct Level(EvacuationRequirement requirement, int cautions)
    {
        public readonly double RequiredPressure = requirement.RequiredPressure.Pascals;
        public readonly double RequiredGaugeReading = requirement.GaugeReading.Pascals;
        public readonly int Cautions = cautions;
        public readonly int Reserved = 0;
    }
}

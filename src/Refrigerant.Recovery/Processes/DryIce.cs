using System;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Processes;

/// <summary>Carbon dioxide is the one refrigerant whose triple point lies above the pressure of the air: pulled below it, it turns solid.</summary>
internal static class DryIce
{
    private const string CarbonDioxide = "R-744";

    /// <summary>Whether the refrigerant is carbon dioxide, whose range ends at the triple point.</summary>
    public static bool CanForm(Fluid fluid) => fluid.Designation == CarbonDioxide;

    /// <summary>The triple point as a message prints it.</summary>
    public static string TriplePoint(Fluid fluid)
    {
        StatePoint triple = fluid.Model.SaturationAtTemperature(fluid.Model.Range.MinimumTemperature).Dew;
        return FormattableString.Invariant($"{triple.Pressure / 1000:F0} kPa absolute and {triple.Temperature - MetalShell.FreezingPoint:F1} °C");
    }

    /// <summary>What to keep clear of, before the job.</summary>
    public static Finding Caution(Fluid fluid) => new(
        Severity.Warning,
        FindingSubject.Freezing,
        $"At {TriplePoint(fluid)} carbon dioxide turns to dry ice: it plugs hoses and valves and holds back pressure that the gauge does not show. Stay above that pressure while there is liquid; never heat a plug with a flame.",
        fluid.Model.Source);
}

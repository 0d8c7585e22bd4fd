using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>Carbon dioxide is the one refrigerant whose triple point lies above the pressure of the air: pulled below it, it turns solid.</summary>
internal static class DryIce
{
    private const string CarbonDioxide = "R-744";

    /// <summary>Whether the refrigerant is carbon dioxide, whose range ends at the triple point.</summary>
    public static bool CanForm(Fluid fluid) => fluid.Designation == CarbonDioxide;

    /// <summary>Pressure and temperature of the triple point.</summary>
    public static (FindingValue Pressure, FindingValue Temperature) TriplePoint(Fluid fluid)
    {
        return (FindingValue.Pascals("triple point, pressure", TriplePressure(fluid).Pascals), FindingValue.Kelvins("triple point", fluid.Model.Range.MinimumTemperature));
    }

    /// <summary>Absolute pressure of the triple point.</summary>
    public static Pressure TriplePressure(Fluid fluid) => new(fluid.Model.SaturationAtTemperature(fluid.Model.Range.MinimumTemperature).Dew.Pressure, PressureUnit.Pascal);

    /// <summary>What to keep clear of, before the job, as a gauge at the place shows it.</summary>
    public static Finding Caution(Fluid fluid, Barometer here)
    {
        FindingValue pressure = FindingValue.GaugePressure("triple point, pressure", here.ToGauge(TriplePressure(fluid)), RoundingMode.Up);
        (_, FindingValue temperature) = TriplePoint(fluid);
        return new Finding(
            StageCodes.DryIce,
            Severity.Warning,
            fluid.Model.Source,
            $"At {pressure} and {temperature} carbon dioxide turns to dry ice: it plugs hoses and valves and holds back pressure that the gauge does not show. Stay above that pressure while there is liquid; never heat a plug with a flame.");
    }
}

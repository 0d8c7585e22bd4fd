#region usings
using System;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Rules;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>Did I reach the level, up here?</summary>
internal static class LevelUpHere
{
    public static void Gauge()
    {
        #region gauge
        Pressure reading = Mercury.FromInches(15); // what the gauge shows
        Barometer here = Barometer.AtElevation(Length.FromMeters(1600));

        Pressure atTheSea = Barometer.Standard.FromVacuum(reading);
        Pressure upHere = here.FromVacuum(reading);

        Console.WriteLine($"15 inHg at sea level: {atTheSea.Kilopascals:F1} kPa absolute");
        Console.WriteLine($"15 inHg at 1600 m:    {upHere.Kilopascals:F1} kPa absolute");
        #endregion
    }

    public static void Required()
    {
        #region required
        Barometer here = Barometer.AtElevation(Length.FromMeters(1600));
        EvacuationRequirement level = EvacuationRequirement.For(
            Fluid.Get("R-134a"),
            charge: Mass.FromPounds(300),
            new EvacuationOptions { Barometer = here });
        double byLaw = Mercury.ToInches(level.VacuumOnRegulationBasis!.Value);
        double upHere = -Mercury.ToInches(level.GaugeReading);

        Console.WriteLine($"class:   {level.Class}-pressure");
        Console.WriteLine($"level:   {level.RequiredPressure.Kilopascals:F1} kPa absolute");
        Console.WriteLine($"by law:  {byLaw:F1} inHg of vacuum");
        Console.WriteLine($"up here: {upHere:F1} inHg of vacuum on the gauge");
        Console.WriteLine($"source:  {level.Source}");

        Pressure reached = here.FromVacuum(Mercury.FromInches(10.2));
        Console.WriteLine($"10.2 inHg up here is enough: {level.IsMetBy(reached)}");
        foreach (Finding finding in level.Findings)
        {
            Console.WriteLine(finding);
        }
        #endregion
    }
}

#region usings
using System;
using Refrigerant.Recovery.Gauges;
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
}

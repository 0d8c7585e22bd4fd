#region usings
using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Rules;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>Another refrigerant next: what does the machine carry over? And its oil.</summary>
internal static class ChangeOfRefrigerant
{
    public static void Predict()
    {
        #region predict
        Hose hose = new()
        {
            Length = Length.FromFeet(5),
            InnerDiameter = Length.FromMillimeters(5),
        };
        RefrigerantChange change = RefrigerantChange.Estimate(
            RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            previous: Fluid.Get("R-22"),
            next: Fluid.Get("R-134a"),
            nextRecovered: Mass.FromKilograms(4),
            new RefrigerantChangeOptions
            {
                Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
                Oil = new ApplianceOil
                {
                    Mass = Mass.FromKilograms(0.25),
                    Kind = OilKind.Mineral,
                },
            });

        Console.WriteLine($"uncleared:        {change.BeforeClearing}");
        Console.WriteLine($"cleared:          {change.AfterClearing}");
        Console.WriteLine($"with oil changed: {change.AfterClearingAndOilChange}");
        Console.WriteLine($"clearing takes {change.Clearing.Duration.Seconds:F0} s");
        foreach (Finding finding in change.Findings)
        {
            Console.WriteLine(finding);
        }
        #endregion
    }

    public static void Drain()
    {
        #region drain
        Fluid r22 = Fluid.Get("R-22");
        ApplianceOil oil = new() { Mass = Mass.FromKilograms(4), Kind = OilKind.Mineral };
        Pressure limit = Barometer.Standard.FromGauge(Pressure.FromPoundsForcePerSquareInch(5));

        Console.WriteLine(OilMatch.Check(r22, OilKind.Mineral)?.Message ?? "mineral oil it is");
        foreach ((string name, double celsius, Pressure pressure) in new[]
        {
            ("cold, at 5 psig:  ", 10, limit),
            ("warm, at 5 psig:  ", 50, limit),
            ("warm, evacuated:  ", 50, Barometer.Standard.FromVacuum(Mercury.FromInches(15))),
        })
        {
            DrainedOil drained = DrainedOil.Estimate(
                r22, oil, Temperature.FromDegreesCelsius(celsius), pressure);
            Console.WriteLine($"{name}{drained.Dissolved.Best.Grams:F0} g "
                + $"({drained.Dissolved.Low.Grams:F0} to {drained.Dissolved.High.Grams:F0} g), "
                + $"{drained.MassFraction.Percent:F1} % of what runs out");
        }
        #endregion
    }

    public static void Push()
    {
        #region push
        OilToDrain oil = new()
        {
            Mass = Mass.FromKilograms(4),
            Viscosity = DynamicViscosity.FromMillipascalSeconds(60), // from the maker's data
            Hoses =
            [
                new Hose
                {
                    Length = Length.FromFeet(6),
                    InnerDiameter = Length.FromMillimeters(8),
                    Rise = Length.FromMeters(0.5),
                },
            ],
            Depth = Length.FromMeters(0.15),
            AllowableGaugePressure = Pressure.FromKilopascals(150),
        };

        Console.WriteLine(OilPush.At(oil, Pressure.FromPoundsForcePerSquareInch(5)));
        OilPush quicker = OilPush.Within(oil, Duration.FromMinutes(1));
        Console.WriteLine(quicker);
        foreach (Finding finding in quicker.Findings)
        {
            Console.WriteLine(finding);
        }
        #endregion
    }
}

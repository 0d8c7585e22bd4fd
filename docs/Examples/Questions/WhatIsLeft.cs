#region usings
using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Residuals;
using Refrigerant.Recovery.Rules;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>What is still in there?</summary>
internal static class WhatIsLeft
{
    public static void Estimate()
    {
        #region estimate
        ResidualCharge left = ResidualCharge.Estimate(
            Fluid.Get("R-134a"),
            volume: Volume.FromLiters(60),
            temperature: Temperature.FromDegreesCelsius(20),
            pressure: Barometer.Standard.FromVacuum(Mercury.FromInches(15)),
            new ResidualOptions
            {
                Charge = Mass.FromKilograms(12),
                Oil = new ApplianceOil
                {
                    Mass = Mass.FromKilograms(2),
                    Kind = OilKind.PolyolEster,
                },
            });

        Console.WriteLine($"vapor:  {left.Vapor.Grams:F0} g");
        Console.WriteLine($"in oil: {left.InOil.Best.Grams:F0} g "
            + $"({left.InOil.Low.Grams:F0} to {left.InOil.High.Grams:F0} g)");
        Console.WriteLine($"total:  {left.Total.Best.Grams:F0} g, "
            + $"{left.FractionOfCharge?.Percent:F1} % of the charge");
        RefrigerantFacts facts = RefrigerantFacts.For(left.Fluid);
        Mass? warming = facts.CarbonDioxideEquivalent(left.Total.Best, AssessmentReport.Fifth);
        Console.WriteLine($"as CO2: {warming?.Kilograms:F0} kg (IPCC AR5)");
        foreach (Finding finding in left.Findings)
        {
            Console.WriteLine(finding);
        }
        #endregion
    }

    public static void Rise()
    {
        #region rise
        // 15 inHg and -20 °C when the valves were closed; later 60 kPa more and 5 °C.
        Pressure closed = Barometer.Standard.FromVacuum(Mercury.FromInches(15));
        ResidualCharge left = ResidualCharge.Estimate(
            Fluid.Get("R-134a"),
            Volume.FromLiters(60),
            Temperature.FromDegreesCelsius(-20),
            closed,
            new ResidualOptions
            {
                RiseTest = new RiseReading
                {
                    Pressure = closed + Pressure.FromKilopascals(60),
                    Temperature = Temperature.FromDegreesCelsius(5),
                },
            });

        Console.WriteLine($"boiled off: {left.Liquid.Best.Grams:F0} g "
            + $"({left.Liquid.Low.Grams:F0} to {left.Liquid.High.Grams:F0} g)");
        #endregion
    }
}

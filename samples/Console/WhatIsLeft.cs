using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Residuals;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>What a vacuum leaves behind.</summary>
internal static class WhatIsLeft
{
    public static void Show()
    {
        Screen.Heading("What is still in there?");

        ResidualCharge left = ResidualCharge.Estimate(
            Fluid.Get("R-410A"),
            Volume.FromLiters(35),
            Temperature.FromDegreesCelsius(20),
            Pressure.FromKilopascals(67.4),
            new ResidualOptions { Charge = Mass.FromKilograms(18), Oil = new ApplianceOil { Mass = Mass.FromKilograms(3), Kind = OilKind.PolyolEster } });
        Screen.Say(FormattableString.Invariant(
            $"R-410A, 18 kg (39.7 lb) charge, 35 L, pulled to 67.4 kPa absolute at 20 °C: {left.Vapor.Kilograms:F3} kg ({left.Vapor.Ounces:F1} oz) of vapor,"));
        Screen.Say(FormattableString.Invariant(
            $"and an estimated {left.InOil.Low.Kilograms:F3} to {left.InOil.High.Kilograms:F3} kg in 3 kg of polyol ester oil."));
    }
}

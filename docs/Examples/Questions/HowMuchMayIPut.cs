#region usings
using System;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>How much may I put in this cylinder?</summary>
internal static class HowMuchMayIPut
{
    public static void Limit()
    {
        #region limit
        // A nominal 50 lb cylinder, by the marks on its collar.
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
            "DOT-4BA400",
            waterCapacity: Mass.FromPounds(47.6),
            tareWeight: Mass.FromPounds(27.5));

        FillLimit limit = CylinderFill.Limit(cylinder, Fluid.Get("R-134a"));

        Mass most = limit.MaximumFill;
        Console.WriteLine($"at most {most.Pounds:F1} lb ({most.Kilograms:F2} kg)");
        Console.WriteLine($"scale:  {limit.MaximumGrossWeight.Pounds:F1} lb with the cylinder");
        Console.WriteLine($"rule:   {limit.GoverningRule.Name}");
        Console.WriteLine($"source: {limit.GoverningRule.Source}");
        #endregion
    }

    public static void Rules()
    {
        RecoveryCylinder cylinder = Cylinder();

        #region rules
        FillLimit limit = CylinderFill.Limit(cylinder, Fluid.Get("R-32"));
        foreach (FillRule rule in limit.Rules)
        {
            string binds = rule.IsLimit ? "" : " (shown only)";
            Console.WriteLine($"{rule.Mass.Pounds,5:F1} lb  {rule.Name}{binds}");
        }
        #endregion
    }

    public static void OnTheScale()
    {
        RecoveryCylinder cylinder = Cylinder();

        #region scale
        Fluid r134a = Fluid.Get("R-134a");
        Mass room = CylinderFill.RoomLeft(cylinder, r134a, scaleReading: Mass.FromPounds(47.6));
        CylinderCount needed = CylinderFill.CylindersNeeded(
            cylinder, r134a, charge: Mass.FromPounds(120));

        Console.WriteLine($"room left: {room.Pounds:F1} lb");
        Console.WriteLine($"120 lb need {needed.Count} cylinders");
        #endregion
    }

    public static void Heat()
    {
        RecoveryCylinder cylinder = Cylinder();

        #region heat
        Fluid r32 = Fluid.Get("R-32");
        Mass overfilled = Mass.FromPounds(0.9 * 47.6); // 90 % of WC
        Temperature? full = CylinderFill.LiquidFullTemperature(cylinder, r32, overfilled);
        if (full is Temperature t)
        {
            Pressure then = CylinderFill.PressureAt(cylinder, r32, overfilled, t);
            Pressure warmer = CylinderFill.PressureAt(
                cylinder, r32, overfilled, t + TemperatureDelta.FromKelvins(10));
            Console.WriteLine(
                $"liquid-full at {t.DegreesFahrenheit:F0} °F, {t.DegreesCelsius:F1} °C");
            Console.WriteLine($"pressure there: {then.PoundsForcePerSquareInch:F0} psia");
            Console.WriteLine($"10 K warmer:    {warmer.PoundsForcePerSquareInch:F0} psia");
        }
        #endregion
    }

    private static RecoveryCylinder Cylinder() =>
        RecoveryCylinder.FromMark("DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5));
}

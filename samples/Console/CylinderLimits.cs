using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>How much a cylinder may hold, by which rule, and when heat makes it burst.</summary>
internal static class CylinderLimits
{
    public static void Show()
    {
        Screen.Heading("How much may go into this cylinder?");

        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5));
        Screen.Say("Water capacity 47.6 lb (21.6 kg), tare 27.5 lb (12.5 kg), mark 4BA400.");
        Screen.Table(
            ["refrigerant", "most", "", "gross weight", "", "liquid-full at", "governed by"],
            new[] { "R-134a", "R-22", "R-32", "R-410A", "R-290" }.Select(name =>
            {
                Fluid fluid = Fluid.Get(name);
                FillLimit limit = CylinderFill.Limit(cylinder, fluid);
                return new[]
                {
                    name,
                    FormattableString.Invariant($"{limit.MaximumFill.Kilograms:F2} kg"),
                    FormattableString.Invariant($"{limit.MaximumFill.Pounds:F1} lb"),
                    FormattableString.Invariant($"{limit.MaximumGrossWeight.Kilograms:F2} kg"),
                    FormattableString.Invariant($"{limit.MaximumGrossWeight.Pounds:F1} lb"),
                    CylinderFill.LiquidFullTemperature(cylinder, fluid, limit.MaximumFill) is { } full
                        ? FormattableString.Invariant($"{full.DegreesCelsius:F0} °C ({full.DegreesFahrenheit:F0} °F)")
                        : "never",
                    limit.GoverningRule.Name,
                };
            }));
    }
}

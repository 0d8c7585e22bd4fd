using System;
using Refrigerant.Recovery.Fluids;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>Saturation and single-phase properties, of a pure fluid and of a blend with glide.</summary>
internal static class Properties
{
    public static void Show()
    {
        Screen.Heading("Refrigerant properties");

        SaturationState r134a = Fluid.Get("R-134a").SaturationAt(Temperature.FromDegreesCelsius(25));
        Screen.Say(FormattableString.Invariant(
            $"R-134a boils at 25 °C (77 °F) under {r134a.Bubble.Pressure.Kilopascals:F1} kPa ({r134a.Bubble.Pressure.PoundsForcePerSquareInch:F1} psi) absolute; liquid {r134a.Bubble.Density.KilogramsPerCubicMeter:F1} kg/m³, vapor {r134a.Dew.Density.KilogramsPerCubicMeter:F2} kg/m³."));
        Screen.Say(FormattableString.Invariant(
            $"Boiling off 1 kg there takes {r134a.LatentHeat.KilojoulesPerKilogram:F1} kJ ({r134a.LatentHeat.BtuPerPound:F1} Btu/lb)."));

        SaturationState r407c = Fluid.Get("R-407C").SaturationAt(Pressure.FromKilopascals(500));
        Screen.Say(FormattableString.Invariant(
            $"R-407C at 500 kPa (72.5 psi) absolute: first bubble at {r407c.Bubble.Temperature.DegreesCelsius:F2} °C, last drop at {r407c.Dew.Temperature.DegreesCelsius:F2} °C, a glide of {r407c.Glide.Kelvins:F2} K."));

        FluidState vapor = Fluid.Get("R-410A").StateAt(Temperature.FromDegreesCelsius(20), Pressure.FromKilopascals(67.4));
        Screen.Say(FormattableString.Invariant(
            $"R-410A vapor at 20 °C (68 °F) under 67.4 kPa absolute weighs {vapor.Density.KilogramsPerCubicMeter:F3} kg/m³ ({vapor.Density.PoundsPerCubicFoot:F4} lb/ft³)."));
    }
}

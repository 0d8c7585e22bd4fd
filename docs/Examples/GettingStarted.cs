#region usings
using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs;

/// <summary>The first calls.</summary>
internal static class GettingStarted
{
    public static void Properties()
    {
        #region properties
        Fluid fluid = Fluid.Get("R-134a"); // "r134a" and "134a" do as well
        SaturationState saturation = fluid.SaturationAt(Temperature.FromDegreesFahrenheit(77));
        FluidState liquid = saturation.Bubble;
        FluidState vapor = saturation.Dew;

        Console.WriteLine($"pressure: {liquid.Pressure.PoundsForcePerSquareInch:F1} psia");
        Console.WriteLine($"liquid:   {liquid.Density.KilogramsPerCubicMeter:F1} kg/m³");
        Console.WriteLine($"vapor:    {vapor.Density.KilogramsPerCubicMeter:F2} kg/m³");
        Console.WriteLine($"latent:   {saturation.LatentHeat.KilojoulesPerKilogram:F1} kJ/kg");
        Console.WriteLine(saturation);
        #endregion
    }

    public static void Gauge()
    {
        #region gauge
        Barometer here = Barometer.AtElevation(Length.FromFeet(5250));
        Pressure absolute = here.FromGauge(Pressure.FromPoundsForcePerSquareInch(70));
        Temperature boiling = Fluid.Get("R-134a").SaturationAt(absolute).Bubble.Temperature;

        Console.WriteLine($"70 psig here is {absolute.PoundsForcePerSquareInch:F1} psia");
        Console.WriteLine($"R-134a boils at {boiling.DegreesFahrenheit:F1} °F");
        #endregion
    }

    public static void Errors()
    {
        #region errors
        try
        {
            Fluid.Get("R-143b");
        }
        catch (UnknownFluidException e)
        {
            Console.WriteLine(e.Message);
        }

        try
        {
            Fluid.Get("R-134a").SaturationAt(Temperature.FromDegreesCelsius(150));
        }
        catch (PropertyRangeException e)
        {
            Console.WriteLine(e.Message);
        }

        try
        {
            Barometer.Standard.FromVacuum(Mercury.FromInches(31));
        }
        catch (ArgumentOutOfRangeException e)
        {
            Console.WriteLine(e.Message);
        }
        #endregion
    }

    public static void Raw()
    {
        #region raw
        PropertyModel model = Fluid.Get("R-134a").Model; // plain SI doubles, absolute pressures
        SaturationPoint point = model.SaturationAtTemperature(298.15);
        Console.WriteLine($"{point.Bubble.Pressure:F0} Pa, {point.Bubble.Density:F1} kg/m³");
        #endregion
    }
}

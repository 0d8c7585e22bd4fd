using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Flow;

/// <summary>Liquid that may flash on its way.</summary>
internal sealed class FlashingLine(Line line, PropertyModel model)
{
    public double MassFlow(double pressure, double enthalpy, double outletPressure, out bool choked)
    {
        StatePoint inlet = model.StateAtEnthalpy(pressure, enthalpy);
        double saturation = model.SaturationAtTemperature(Math.Min(inlet.Temperature, model.Range.MaximumSaturationTemperature)).Bubble.Pressure;
        double floor = 0.9 * saturation;
        choked = outletPressure < floor;
        double viscosity = model.ViscosityAtSaturation(Math.Min(0.98 * model.Range.MaximumSaturationTemperature, inlet.Temperature)).Liquid;
        return LiquidLine.MassFlow(line, pressure - Math.Max(outletPressure, floor), inlet.Density, viscosity);
    }
}

using System.Collections.Generic;

namespace Refrigerant.Recovery.Calculators.Forms;

/// <summary>Every number that the calculators ask for. The same name means the same on every page, so that a link may be carried over.</summary>
public static class Fields
{
    public static readonly Field Temperature = new("temperature", "Temperature of the refrigerant", Measure.Temperature, 298.15);
    public static readonly Field Gauge = new("gauge", "Pressure on the gauge", Measure.GaugePressure, 943e3);
    public static readonly Field GaugeError = new("gauge-error", "The gauge may be off by", Measure.PressureDifference, 10e3);
    public static readonly Field TemperatureError = new("temperature-error", "The thermometer may be off by", Measure.TemperatureDifference, 1);
    public static readonly Field Elevation = new("elevation", "Elevation of the place above sea level", Measure.Length, 0);
    public static readonly Field WaterCapacity = new("wc", "Water capacity (mark WC)", Measure.Mass, 47.6 * 0.45359237);
    public static readonly Field Tare = new("tare", "Tare weight (mark TW)", Measure.Mass, 27.5 * 0.45359237);
    public static readonly Field Scale = new("scale", "Scale shows now", Measure.Mass, 27.5 * 0.45359237, "The tare weight for an empty cylinder.");
    public static readonly Field Volume = new("volume", "Internal volume of the appliance", Measure.Volume, 0.024, "Pipes, coils and receivers together.");
    public static readonly Field Vacuum = new("vacuum", "Vacuum on the gauge, below the air here", Measure.Vacuum, 10 * 3386.389);
    public static readonly Field Charge = new("charge", "Charge of the appliance", Measure.Mass, 10);
    public static readonly Field Displacement = new("displacement", "Displacement of the recovery machine", Measure.Flow, 0.5e-3);
    public static readonly Field Bore = new("bore", "Inner diameter of the hoses", Measure.Bore, 0.008);
    public static readonly Field HoseLength = new("hose", "Length of each hose", Measure.Length, 1.524);

    public static IReadOnlyList<Field> All { get; } =
        [Temperature, Gauge, GaugeError, TemperatureError, Elevation, WaterCapacity, Tare, Scale, Volume, Vacuum, Charge, Displacement, Bore, HoseLength];
}

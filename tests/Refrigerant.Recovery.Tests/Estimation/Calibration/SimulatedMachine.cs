using System;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>
/// A compressor by the balance of mass in its cylinder: what stays in the clearance is as dense as the gas discharged, which is hot. SI units.
/// </summary>
/// <param name="Swept">Volume swept a second.</param>
/// <param name="ValveLoss">Share of the suction pressure lost in the inlet valve.</param>
/// <param name="Clearance">Clearance volume over swept volume.</param>
/// <param name="Warming">How far suction gas warms towards a housing that is 8 K warmer than the air.</param>
/// <param name="Cooling">How far discharged gas comes back from its adiabatic temperature.</param>
/// <param name="Told">What the technician believes it sweeps.</param>
internal sealed record SimulatedMachine(double Swept, double ValveLoss, double Clearance, double Warming, double Cooling, double Told)
{
    private const double HousingAboveAir = 8;

    /// <summary>What it draws at pressure ratio one, as volume at its inlet, where the gas is as warm as the air.</summary>
    public double Displacement(double air) => Swept * (1 - ValveLoss) * air / (air + (Warming * HousingAboveAir));

    public static SimulatedMachine Draw(Noise random, double swept) => new(
        swept,
        random.Uniform(0, 0.04),
        random.Uniform(0.025, 0.06),
        random.Uniform(0.1, 0.45),
        random.Uniform(0.1, 0.4),
        swept * random.Uniform(0.85, 1.15));

    /// <summary>Mass flow, kg/s.</summary>
    /// <param name="suction">Pressure at its inlet.</param>
    /// <param name="temperature">Of the gas there.</param>
    /// <param name="perPressure">Density over pressure of the gas there.</param>
    /// <param name="discharge">Pressure at its outlet.</param>
    /// <param name="air">Temperature of the air.</param>
    public double Flow(double suction, double temperature, double perPressure, double discharge, double air)
    {
        double warmed = temperature + (Warming * Math.Max(0, air + HousingAboveAir - temperature));
        double inside = suction * (1 - ValveLoss);
        double density = inside * perPressure * temperature / warmed;
        double ratio = Math.Max(1, discharge / inside);
        double adiabatic = warmed * Math.Pow(ratio, 0.13);
        double hot = adiabatic - (Cooling * (adiabatic - warmed));

        // The gas left in the clearance; some 10 % denser than an ideal one at the discharge.
        double left = Clearance * density * ratio * warmed / hot * (1 + (0.1 * (1 - (1 / ratio))));
        return Math.Max(0, Swept * ((density * (1 + Clearance)) - left));
    }
}

using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Doubles;

/// <summary>
/// A made-up fluid whose every property is a closed formula, so that tests can work out by hand what a rule must give:
/// saturation pressure p0·exp(b·(1/T0 − 1/T)) (dew pressure by a factor lower for a "blend"), saturated liquid density linear in T,
/// liquid of constant bulk modulus, vapor an ideal gas.
/// </summary>
internal sealed class SimpleFluid : PropertyModel
{
    public const double GasConstant = 8.314462618;

    public SimpleFluid(string designation = "R-test")
    {
        Designation = designation;
        Parts = [(designation, 1)];
    }

    public override string Designation { get; }

    public override double MolarMass => 0.1;

    public double Critical { get; init; } = 400;

    public double Lowest { get; init; } = 200;

    public double Highest { get; init; } = 500;

    /// <summary>Bubble pressure at 313.15 K, Pa.</summary>
    public double PressureAt313 { get; init; } = 1e6;

    public double Slope { get; init; } = 2500;

    public double DewRatio { get; init; } = 1;

    /// <summary>Liquid density at 298.15 K, kg/m³.</summary>
    public double LiquidDensity { get; init; } = 1200;

    /// <summary>Loss of liquid density, kg/(m³·K).</summary>
    public double Expansion { get; init; } = 4;

    public double BulkModulus { get; init; } = 5e8;

    public double HighestPressure { get; init; } = 5e7;

    public ModelQuality ModelQuality { get; init; }

    /// <summary>Components and mass fractions that the fluid claims to have.</summary>
    public IReadOnlyList<(string Component, double MassFraction)> Parts { get; init; }

    public override double CriticalTemperature => Critical;

    public override double CriticalPressure => BubblePressure(Critical);

    public override double CriticalDensity => Liquid(Critical);

    public override PropertyRange Range => new(Lowest, Highest, HighestPressure, Critical);

    public override IReadOnlyList<FluidComponent> Composition =>
        [.. Parts.Select(part => new FluidComponent(part.Component, part.MassFraction, part.MassFraction))];

    public override ModelQuality Quality => ModelQuality;

    public override string Source => "made up for tests";

    public double BubblePressure(double t) => PressureAt313 * Math.Exp(Slope * ((1 / 313.15) - (1 / t)));

    public double Liquid(double t) => LiquidDensity - (Expansion * (t - 298.15));

    public double VaporDensity(double t, double p) => p * MolarMass / (GasConstant * t);

    public override SaturationPoint SaturationAtTemperature(double temperature)
    {
        if (!(temperature >= Lowest && temperature <= Critical))
        {
            throw Outside("temperature", temperature, Lowest, Critical, "K");
        }

        double bubble = BubblePressure(temperature);
        double dew = bubble * DewRatio;
        return new SaturationPoint(
            Point(Phase.Liquid, temperature, bubble, Liquid(temperature)),
            Point(Phase.Vapor, temperature, dew, VaporDensity(temperature, dew)));
    }

    public override SaturationPoint SaturationAtPressure(double pressure) => throw new NotSupportedException();

    public override StatePoint StateAt(double temperature, double pressure)
    {
        if (!(temperature >= Lowest && temperature <= Highest))
        {
            throw Outside("temperature", temperature, Lowest, Highest, "K");
        }

        if (!(pressure > 0 && pressure <= HighestPressure))
        {
            throw Outside("pressure", pressure, 0, HighestPressure, "Pa");
        }

        if (temperature > Critical || pressure <= DewRatio * BubblePressure(temperature))
        {
            return Point(temperature > Critical ? Phase.Supercritical : Phase.Vapor, temperature, pressure, VaporDensity(temperature, pressure));
        }

        double bubble = BubblePressure(temperature);
        return Point(Phase.Liquid, temperature, pressure, Liquid(temperature) * (1 + ((pressure - bubble) / BulkModulus)));
    }

    public override VesselPoint VesselAtTemperature(double temperature, double density)
    {
        if (!(temperature >= Lowest && temperature <= Highest))
        {
            throw Outside("temperature", temperature, Lowest, Highest, "K");
        }

        if (temperature > Critical)
        {
            StatePoint gas = Point(Phase.Supercritical, temperature, density * GasConstant * temperature / MolarMass, density);
            return new VesselPoint(gas, default, gas);
        }

        SaturationPoint saturation = SaturationAtTemperature(temperature);
        if (density >= saturation.Bubble.Density)
        {
            double pressure = saturation.Bubble.Pressure + (((density / saturation.Bubble.Density) - 1) * BulkModulus);
            if (pressure > HighestPressure)
            {
                throw Outside("pressure", pressure, 0, HighestPressure, "Pa");
            }

            StatePoint liquid = Point(Phase.Liquid, temperature, pressure, density);
            return new VesselPoint(liquid, liquid, default);
        }

        if (density <= saturation.Dew.Density)
        {
            StatePoint vapor = Point(Phase.Vapor, temperature, density * GasConstant * temperature / MolarMass, density);
            return new VesselPoint(vapor, default, vapor);
        }

        double quality = ((1 / density) - (1 / saturation.Bubble.Density)) / ((1 / saturation.Dew.Density) - (1 / saturation.Bubble.Density));
        StatePoint bulk = new(Phase.TwoPhase, temperature, saturation.Bubble.Pressure, density, 0, 0, quality);
        return new VesselPoint(bulk, saturation.Bubble, saturation.Dew);
    }

    public override VesselPoint VesselAtEnergy(double density, double internalEnergy) => throw new NotSupportedException();

    public override StatePoint StateAtEnthalpy(double pressure, double enthalpy) => throw new NotSupportedException();

    public override StatePoint StateAtEntropy(double pressure, double entropy) => throw new NotSupportedException();

    /// <summary>At constant density of a full vessel: dp/dT = dp_bubble/dT + K·ρ·a/ρ'², at ρ = ρ'.</summary>
    public override StateDerivatives DerivativesAt(double temperature, double density) => new(
        1000, 1500, 500, BulkModulus / Liquid(temperature),
        (BubblePressure(temperature) * Slope / (temperature * temperature)) + (BulkModulus * Expansion / Liquid(temperature)));

    public override SaturationViscosity ViscosityAtSaturation(double temperature) => new(2e-4, 1e-5, true);

    private static StatePoint Point(Phase phase, double t, double p, double density) =>
        new(phase, t, p, density, 0, 0, phase == Phase.Liquid ? 0 : 1);

    private PropertyRangeException Outside(string parameter, double value, double low, double high, string unit) =>
        new(Designation, parameter, value, low, high, unit, Source);
}

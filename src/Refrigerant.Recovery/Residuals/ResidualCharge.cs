using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Residuals;

/// <summary>What is left in an appliance at a pressure and temperature, and where. Immutable.</summary>
/// <remarks>
/// A vacuum alone proves little: liquid that has cooled itself by boiling keeps the pressure low. Hold, watch the pressure, and pull again.
/// Local codes and licensed practice govern.
/// </remarks>
public sealed record ResidualCharge
{
    private readonly double _vapor;
    private readonly double? _charge;

    internal ResidualCharge(Fluid fluid, double vapor, MassRange liquid, MassRange inOil, double spaces, double? charge, IReadOnlyList<Finding> findings)
    {
        Fluid = fluid;
        _vapor = vapor;
        Liquid = liquid;
        InOil = inOil;
        InSpaces = new Mass(spaces, MassUnit.Kilogram);
        MassRange gas = new(vapor + spaces, vapor + spaces, vapor + spaces);
        Total = gas.Plus(liquid).Plus(inOil);
        _charge = charge;
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The refrigerant.</summary>
    public Fluid Fluid { get; }

    /// <summary>Vapor in the appliance: its volume times the density of the real gas.</summary>
    public Mass Vapor => new(_vapor, MassUnit.Kilogram);

    /// <summary>Liquid in the appliance, as the caller knows it or a rise test tells; zero where nothing is known, which a finding says.</summary>
    public MassRange Liquid { get; }

    /// <summary>Refrigerant dissolved in oil: an estimate; zero where no oil was given. Above 0.9 of the saturation pressure it is what the oil holds at least, which the range and a finding say.</summary>
    public MassRange InOil { get; }

    /// <summary>Refrigerant in hoses, the machine and other spaces.</summary>
    public Mass InSpaces { get; }

    /// <summary>Everything together.</summary>
    public MassRange Total { get; }

    /// <summary>Best estimate as a share of the charge; null where the charge is unknown.</summary>
    public Ratio? FractionOfCharge =>
        _charge is double charge ? new Ratio(Total.BestKilograms / charge, RatioUnit.DecimalFraction) : null;

    /// <summary>What should be known about the estimate.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Estimates what is left in an appliance.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="volume">Internal volume of the appliance, greater than zero.</param>
    /// <param name="temperature">Temperature of its content; the warmest part decides for vapor, the coldest for liquid.</param>
    /// <param name="pressure">Absolute pressure in it, greater than zero.</param>
    /// <param name="options">Charge, liquid, rise test, oil, hoses; null for none known.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    /// <exception cref="ArgumentException">Both known liquid and a rise test are given.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the known liquid does not fit the volume.</exception>
    /// <exception cref="PropertyRangeException">A state is outside the range of the fluid's equation.</exception>
    /// <example>
    /// <code>
    /// ResidualCharge left = ResidualCharge.Estimate(
    ///     Fluid.Get("R-134a"),
    ///     Volume.FromLiters(60),
    ///     Temperature.FromDegreesCelsius(20),
    ///     Barometer.Standard.FromVacuum(Mercury.FromInches(15)));
    /// Console.WriteLine($"{left.Vapor.Grams:F0} g"); // 128 g
    /// </code>
    /// </example>
    public static ResidualCharge Estimate(Fluid fluid, Volume volume, Temperature temperature, Pressure pressure, ResidualOptions? options = null)
    {
        Require.NotNull(fluid, nameof(fluid));
        double space = Require.Positive(volume.CubicMeters, "m³", nameof(volume));
        double kelvins = Require.Positive(temperature.Kelvins, "K", nameof(temperature));
        double pascals = Require.Positive(pressure.Pascals, "Pa absolute", nameof(pressure));
        return new ResidualEstimate(fluid, space, kelvins, pascals, options ?? ResidualOptions.None).Result();
    }

    /// <summary>The CO2-equivalent of the best estimate for a global warming potential.</summary>
    /// <param name="globalWarmingPotential">Global warming potential over 100 years, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public Mass CarbonDioxideEquivalent(double globalWarmingPotential) => new(
        Total.BestKilograms * Require.NotNegative(globalWarmingPotential, "", nameof(globalWarmingPotential)), MassUnit.Kilogram);

    /// <summary>The parts and their sum, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Fluid.Designation}: {Total} left; vapor {_vapor:G4} kg, liquid {Liquid.BestKilograms:G4} kg, in oil {InOil.BestKilograms:G4} kg, in hoses and machine {InSpaces.Kilograms:G4} kg");
}

using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>How full a recovery cylinder may be, how much more fits, and what heat does to it.</summary>
/// <remarks>Figures for planning. Weigh every filling; local codes and licensed practice govern.</remarks>
public static class CylinderFill
{
    /// <summary>The most refrigerant that a cylinder may hold: the least of all the rules that apply, each with its mass and source.</summary>
    /// <param name="cylinder">The cylinder, with its content so far.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="options">Today's date and oil; null for none known.</param>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The oil takes the whole volume of the cylinder.</exception>
    /// <exception cref="PropertyRangeException">The fluid's equation covers none of the temperatures that the rules name.</exception>
    /// <example>
    /// <code>
    /// RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
    ///     "DOT-4BA400",
    ///     waterCapacity: Mass.FromPounds(47.6),
    ///     tareWeight: Mass.FromPounds(27.5));
    /// FillLimit limit = CylinderFill.Limit(cylinder, Fluid.Get("R-134a"));
    /// Console.WriteLine($"{limit.MaximumFill.Pounds:F1} lb"); // 46.0 lb
    /// Console.WriteLine($"{limit.MaximumGrossWeight.Pounds:F1} lb"); // 73.5 lb
    /// </code>
    /// </example>
    public static FillLimit Limit(RecoveryCylinder cylinder, Fluid fluid, FillOptions? options = null)
    {
        Require.NotNull(cylinder, nameof(cylinder));
        Require.NotNull(fluid, nameof(fluid));
        options ??= FillOptions.None;
        double volume = cylinder.InternalVolume.CubicMeters;
        if (options.OilVolume.CubicMeters >= volume)
        {
            throw new ArgumentOutOfRangeException(
                nameof(options),
                $"{nameof(FillOptions.OilVolume)} is {Require.Text(options.OilVolume.CubicMeters)} m³; it must be less than the volume of {cylinder.Label}, {Require.Text(volume)} m³.");
        }

        FillRuleSet set = new(cylinder, fluid.Model, options);
        FillRule? governing = set.Rules.Where(rule => rule.IsLimit).OrderBy(rule => rule.Kilograms).FirstOrDefault();
        if (governing is null)
        {
            PropertyRange range = fluid.Model.Range;
            throw new PropertyRangeException(
                fluid.Designation, "temperature", FillFigures.GuidelineTemperature, range.MinimumTemperature, range.MaximumTemperature, "K", fluid.Model.Source);
        }

        return new FillLimit(
            cylinder, fluid, governing, set.Rules, set.NotApplied, FillFindings.For(cylinder, fluid, options, set, governing));
    }

    /// <summary>What may still be added to a cylinder that stands on a scale; zero where it is at or past its limit.</summary>
    /// <param name="cylinder">The cylinder; its content is taken from the scale.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="scaleReading">Weight of the cylinder, its valve and its content; not below the tare weight.</param>
    /// <param name="options">Today's date and oil; null for none known.</param>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The reading is below the tare weight.</exception>
    /// <example>
    /// <code>
    /// RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
    ///     "DOT-4BA400",
    ///     waterCapacity: Mass.FromPounds(47.6),
    ///     tareWeight: Mass.FromPounds(27.5));
    /// Mass room = CylinderFill.RoomLeft(
    ///     cylinder, Fluid.Get("R-134a"), scaleReading: Mass.FromPounds(60));
    /// Console.WriteLine($"{room.Pounds:F1} lb"); // 13.5 lb
    /// </code>
    /// </example>
    public static Mass RoomLeft(RecoveryCylinder cylinder, Fluid fluid, Mass scaleReading, FillOptions? options = null) =>
        Limit(Require.NotNull(cylinder, nameof(cylinder)).WeighedAt(scaleReading), fluid, options).Room;

    /// <summary>How many cylinders like one given a charge needs, each filled to its limit.</summary>
    /// <param name="cylinder">A cylinder; each is taken to hold the content that this one has.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="charge">The mass to be stored, greater than zero.</param>
    /// <param name="options">Today's date and oil; null for none known.</param>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The charge is not greater than zero, or needs more than a million cylinders.</exception>
    public static CylinderCount CylindersNeeded(RecoveryCylinder cylinder, Fluid fluid, Mass charge, FillOptions? options = null)
    {
        double kilograms = Require.Positive(charge.Kilograms, "kg", nameof(charge));
        return new CylinderCount(Limit(cylinder, fluid, options), kilograms);
    }

    /// <summary>
    /// The temperature at which the liquid fills the whole cylinder and the pressure starts to rise by several bar a kelvin; null for a
    /// filling so small that it never does: its liquid boils away first.
    /// </summary>
    /// <param name="cylinder">The cylinder; its content is not used.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="mass">The mass in it, greater than zero.</param>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or more than fits as a liquid at any temperature of the equation.</exception>
    public static Temperature? LiquidFullTemperature(RecoveryCylinder cylinder, Fluid fluid, Mass mass) =>
        Vessel(cylinder, fluid, mass).LiquidFullTemperature is double kelvins ? new Temperature(kelvins, TemperatureUnit.Kelvin) : null;

    /// <summary>Absolute pressure in a cylinder at a temperature, before and after it is liquid-full. Without air or other gases in it.</summary>
    /// <param name="cylinder">The cylinder; its content is not used.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="mass">The mass in it, greater than zero.</param>
    /// <param name="temperature">Temperature of the content.</param>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not greater than zero, or more than fits as a liquid.</exception>
    /// <exception cref="PropertyRangeException">The state is outside the range of the fluid's equation.</exception>
    public static Pressure PressureAt(RecoveryCylinder cylinder, Fluid fluid, Mass mass, Temperature temperature) =>
        new(Vessel(cylinder, fluid, mass).At(temperature.Kelvins).Bulk.Pressure, PressureUnit.Pascal);

    /// <summary>The temperature at which the pressure in a cylinder reaches the set pressure of its relief device; null where the equation's range ends first.</summary>
    /// <param name="cylinder">The cylinder; its content is not used.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="mass">The mass in it, greater than zero.</param>
    /// <param name="setPressure">Set pressure of the relief device, gauge, greater than zero.</param>
    /// <param name="barometer">The air around it; the standard atmosphere where null.</param>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not greater than zero, or the mass more than fits as a liquid.</exception>
    public static Temperature? ReliefTemperature(
        RecoveryCylinder cylinder, Fluid fluid, Mass mass, Pressure setPressure, Barometer? barometer = null)
    {
        Require.Positive(setPressure.Pascals, "Pa", nameof(setPressure));
        double absolute = (barometer ?? Barometer.Standard).FromGauge(setPressure).Pascals;
        return Vessel(cylinder, fluid, mass).TemperatureAt(absolute) is double kelvins ? new Temperature(kelvins, TemperatureUnit.Kelvin) : null;
    }

    /// <summary>Pressure and liquid fill of a closed cylinder as it warms up, as data for a chart.</summary>
    /// <param name="cylinder">The cylinder; its content is not used.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="mass">The mass in it, greater than zero.</param>
    /// <param name="from">Lowest temperature.</param>
    /// <param name="to">Highest temperature, above <paramref name="from"/>.</param>
    /// <param name="intervals">Equal steps of temperature, from 1 to 10 000. The liquid-full point is added where it lies between.</param>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the mass more than fits as a liquid.</exception>
    /// <exception cref="PropertyRangeException">Already the lowest temperature is outside the range of the fluid's equation.</exception>
    public static CylinderHeatCurve HeatCurve(
        RecoveryCylinder cylinder, Fluid fluid, Mass mass, Temperature from, Temperature to, int intervals = 60)
    {
        Require.InRange(intervals, 1, 10_000, "intervals", nameof(intervals));
        double start = Require.Finite(from.Kelvins, "K", nameof(from));
        double end = Require.Finite(to.Kelvins, "K", nameof(to));
        if (end <= start)
        {
            throw new ArgumentOutOfRangeException(
                nameof(to), $"{nameof(to)} is {Require.Text(end)} K; it must be above {nameof(from)}, {Require.Text(start)} K.");
        }

        return CylinderHeatCurve.Create(Vessel(cylinder, fluid, mass), start, end, intervals);
    }

    private static ClosedVessel Vessel(RecoveryCylinder cylinder, Fluid fluid, Mass mass)
    {
        Require.NotNull(cylinder, nameof(cylinder));
        Require.NotNull(fluid, nameof(fluid));
        double kilograms = Require.Positive(mass.Kilograms, "kg", nameof(mass));
        return new ClosedVessel(fluid.Model, kilograms / cylinder.InternalVolume.CubicMeters, nameof(mass));
    }
}

using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Oils;

namespace Refrigerant.Recovery.Residuals;

/// <summary>One estimate of what is left, part by part.</summary>
internal sealed class ResidualEstimate
{
    private const string Practice = "common practice";

    private readonly List<Finding> _findings = [];
    private readonly Fluid _fluid;
    private readonly PropertyModel _model;
    private readonly double _volume;
    private readonly double _temperature;
    private readonly double _pressure;
    private readonly ResidualOptions _options;

    public ResidualEstimate(Fluid fluid, double volume, double temperature, double pressure, ResidualOptions options)
    {
        if (options.Liquid is not null && options.RiseTest is not null)
        {
            throw new ArgumentException("Give either the liquid that is known to be left or a rise test, not both.", nameof(options));
        }

        _fluid = fluid;
        _model = fluid.Model;
        _volume = volume;
        _temperature = temperature;
        _pressure = pressure;
        _options = options;
    }

    public ResidualCharge Result()
    {
        double density = VaporDensity.At(_model, _temperature, _pressure, out VaporState state);
        MassRange liquid = _options.Liquid is UnitsNet.Mass known ? Known(known.Kilograms)
            : _options.RiseTest is RiseReading rise ? Rise(density, rise)
            : Unknown(state);
        if (state == VaporState.AboveSaturation)
        {
            Add(
                ResidualCodes.AboveSaturation,
                Severity.Warning,
                _model.Source,
                $"The pressure is above saturation at this temperature: the space is full of liquid, or air is in it, or the temperature is not that of the content. The estimate counts saturated vapor.");
        }

        MassRange inOil = InOil();
        double spaces = Spaces();
        double vapor = (_volume - LiquidVolume(liquid.BestKilograms)) * density;
        double? charge = _options.Charge?.Kilograms;
        ResidualCharge result = new(_fluid, vapor, liquid, inOil, spaces, charge, _findings);
        if (charge is double full && result.Total.BestKilograms > full)
        {
            Add(
                ResidualCodes.MoreThanCharge,
                Severity.Warning,
                Practice,
                $"The estimate of {FindingValue.Kilograms("left", result.Total.BestKilograms)} is more than the charge of {FindingValue.Kilograms("charge", full)}: check volume, pressure and temperature.");
        }

        return new(_fluid, vapor, liquid, inOil, spaces, charge, _findings);
    }

    /// <summary>The volume that liquid takes from the vapor; saturated liquid at the temperature of the content.</summary>
    private double LiquidVolume(double liquid)
    {
        if (liquid <= 0 || _temperature > _model.Range.MaximumSaturationTemperature)
        {
            return 0;
        }

        double volume = liquid / _model.SaturationAtTemperature(_temperature).Bubble.Density;
        return volume <= _volume
            ? volume
            : throw new ArgumentOutOfRangeException(
                nameof(ResidualOptions.Liquid),
                $"{nameof(ResidualOptions.Liquid)} is {Text(liquid)} kg, {Text(volume)} m³ at {Text(_temperature)} K; it must fit the volume of {Text(_volume)} m³.");
    }

    private MassRange Known(double liquid)
    {
        double uncertainty = _options.LiquidUncertainty.Kilograms;
        return new MassRange(Math.Max(0, liquid - uncertainty), liquid, liquid + uncertainty);
    }

    private MassRange Unknown(VaporState state)
    {
        if (state == VaporState.Saturated)
        {
            Add(
                ResidualCodes.AtSaturation,
                Severity.Warning,
                _model.Source,
                $"The pressure equals saturation at this temperature: liquid is likely to be left, in an amount that pressure and temperature cannot tell. Warm it, pull again, hold and watch the pressure.");
        }
        else
        {
            Add(
                ResidualCodes.NoLiquidCounted,
                Severity.Caution,
                Practice,
                $"The estimate counts no liquid. A vacuum alone proves little: a pool that has cooled itself by boiling keeps the pressure low. Close the valves, hold, and see whether the pressure comes back.");
        }

        return default;
    }

    /// <summary>
    /// What boiled off during the hold: V·(ρ2 − ρ1), densities of the real vapor at the two states. At least that much liquid was there;
    /// all of it if the last pressure is clear below saturation. The bounds take each reading at its worst.
    /// </summary>
    private MassRange Rise(double first, RiseReading rise)
    {
        double temperature = rise.Temperature.Kelvins;
        double pressure = rise.Pressure.Pascals;
        double dp = rise.PressureAccuracy.Pascals;
        double dT = rise.TemperatureAccuracy.Kelvins;
        double second = VaporDensity.At(_model, temperature, pressure, out VaporState state);
        double boiled = _volume * (second - first);
        double error = _volume * (Spread(_temperature, _pressure, dp, dT, first) + Spread(temperature, pressure, dp, dT, second));
        if (-boiled > error)
        {
            Add(
                ResidualCodes.Falls,
                Severity.Warning,
                Practice,
                $"The second reading tells of less vapor than the first, which cannot be in a shut space: the readings may be in the wrong order, or something still draws. Nothing follows from them.");
        }
        else if (pressure <= _pressure)
        {
            Add(
                ResidualCodes.NoRise,
                Severity.Note,
                Practice,
                $"The pressure did not rise during the hold: nothing boiled off, as far as the gauge tells.");
        }
        else
        {
            Add(
                ResidualCodes.RiseAsLiquid,
                Severity.Caution,
                Practice,
                $"The rise is taken as liquid that boiled off. A leak of air into the appliance looks the same: repeat the hold; a rise that goes on past saturation is air.");
        }

        if (state != VaporState.Superheated)
        {
            Add(
                ResidualCodes.LowerBound,
                Severity.Warning,
                _model.Source,
                $"The pressure came back to saturation: liquid is still there, and the figure for it is a lower bound only.");
        }

        return new MassRange(Math.Max(0, boiled - error), Math.Max(0, boiled), Math.Max(0, boiled + error), state != VaporState.Superheated);
    }

    private double Spread(double temperature, double pressure, double dp, double dT, double density)
    {
        double low = VaporDensity.At(_model, temperature + dT, Math.Max(pressure - dp, pressure * 1e-3), out _);
        double high = VaporDensity.At(_model, temperature - dT, pressure + dp, out _);
        return Math.Max(Math.Abs(density - low), Math.Abs(high - density));
    }

    private MassRange InOil()
    {
        if (_options.Oil is not ApplianceOil oil || oil.Mass.Kilograms <= 0)
        {
            return default;
        }

        MassRange dissolved = DissolvedInOil.UpToLimit(_model, _temperature, _pressure, oil, out bool atLeast);
        if (atLeast)
        {
            Add(
                ResidualCodes.OilAtLeast,
                Severity.Warning,
                SolubilityTable.Source,
                $"The oil holds {FindingValue.Kilograms("dissolved", dissolved.BestKilograms)} at least: so close to saturation it can take up refrigerant without bound, and how much more the pressure does not tell. Warm the oil and pull the pressure down.");
            return dissolved;
        }

        Add(
            ResidualCodes.InOil,
            Severity.Caution,
            SolubilityTable.Source,
            $"The oil holds some {FindingValue.Kilograms("dissolved", dissolved.BestKilograms)}, between {FindingValue.Kilograms("lowest", dissolved.LowKilograms)} and {FindingValue.Kilograms("highest", dissolved.HighKilograms)}: an estimate.");
        return dissolved;
    }

    private double Spaces()
    {
        double sum = 0;
        foreach (ResidualSpace space in _options.Spaces)
        {
            double temperature = space.Temperature.Kelvins;
            double density = space.IsLiquidFilled
                ? _model.SaturationAtTemperature(temperature).Bubble.Density
                : VaporDensity.At(_model, temperature, space.Pressure.Pascals, out _);
            sum += space.Volume.CubicMeters * density;
        }

        return sum;
    }

    private void Add(FindingCode code, Severity severity, string source, FormattableString message) =>
        _findings.Add(new Finding(code, severity, source, message));

    private static string Text(double value) => Require.Text(value);
}

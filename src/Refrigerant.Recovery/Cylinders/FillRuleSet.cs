using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>Applies the filling rules of a place to one cylinder and refrigerant.</summary>
internal sealed class FillRuleSet
{
    private readonly List<FillRule> _rules = [];
    private readonly List<FillRuleNotApplied> _notApplied = [];
    private readonly RecoveryCylinder _cylinder;
    private readonly PropertyModel _model;
    private readonly double _volume;
    private readonly FillRules _places;

    public FillRuleSet(RecoveryCylinder cylinder, PropertyModel model, FillOptions options)
    {
        _cylinder = cylinder;
        _model = model;
        _volume = cylinder.InternalVolume.CubicMeters - options.OilVolume.CubicMeters;
        _places = options.Rules;
        AddShareAt(FillRuleKind.EightyPercentAt25C, FillFigures.EightyPercentAt25C, FillFigures.EightyPercent, FillFigures.GuidelineTemperature);
        AddNotLiquidFull(FillRuleKind.NotLiquidFullAt55C, FillFigures.NotLiquidFullAt55C, FillFigures.LiquidFullTemperature);
        double? general = AddFillingRatio();
        AddListedFillingRatio(general);
        AddListedFillingDensity();
        AddServicePressure();
        AddRecoveredWithOil(options.ApplyRecoveredWithOil);
        AddOldRule();
        AddShareAt(FillRuleKind.EightyPercentAt20C, FillFigures.EightyPercentAt20C, FillFigures.EightyPercent, FillFigures.SpanishTemperature);
        AddFillingConstant();
        if (options.Rules.Own is (double share, double celsius, RuleFigure figure))
        {
            AddShareAt(FillRuleKind.GivenByCaller, figure, share, celsius + 273.15);
        }

        if (options.Rules != FillRules.UnitedStates && !_rules.Exists(rule => rule.IsLimit))
        {
            IsWithoutFigure = true;
            AddLibraryBound();
        }
    }

    /// <summary>Whether no rule of the place gives a mass, so that the library's own bound stands in.</summary>
    public bool IsWithoutFigure { get; }

    public IReadOnlyList<FillRule> Rules => _rules;

    public IReadOnlyList<FillRuleNotApplied> NotApplied => _notApplied;

    private void AddShareAt(FillRuleKind kind, RuleFigure figure, double share, double temperature)
    {
        if (LiquidDensity(kind, temperature) is double density)
        {
            Add(kind, figure, share * density, $"ρ'({Text(Math.Round(temperature - 273.15, 3))} °C) = {Text(density)} kg/m³");
        }
    }

    private void AddNotLiquidFull(FillRuleKind kind, RuleFigure figure, double temperature)
    {
        if (LiquidDensity(kind, temperature) is double density)
        {
            Add(kind, figure, density * (1 - FillFigures.LiquidFullMargin), $"ρ'({Text(temperature - 273.15)} °C) = {Text(density)} kg/m³");
        }
    }

    /// <summary>P200: low-pressure liquefied gases by the liquid density at 50 °C and 60 °C, all by the pressure at 65 °C.</summary>
    /// <returns>
    /// The mean density that the listed filling ratios stand for: 0.95·ρ'(50 °C), for high-pressure gases that at the test pressure; null
    /// where neither is known.
    /// </returns>
    private double? AddFillingRatio()
    {
        if (!_places.Has(FillRuleKind.LiquidDensityAt50C))
        {
            return null;
        }

        bool isDomestic = _places == FillRules.UnitedStates;
        double? ratio = null;
        if (LiquidDensity(FillRuleKind.LiquidDensityAt50C, FillFigures.FillingRatioTemperature) is double liquid)
        {
            ratio = FillFigures.FillingRatioFactor * liquid;
            Add(FillRuleKind.LiquidDensityAt50C, isDomestic ? FillFigures.LiquidDensityAt50C : FillFigures.P200Density, ratio.Value, $"ρ'(50 °C) = {Text(liquid)} kg/m³");
        }

        AddNotLiquidFull(
            FillRuleKind.NotLiquidFullAt60C, isDomestic ? FillFigures.NotLiquidFullAt60C : FillFigures.P200Full, FillFigures.VaporTemperature);
        if (_cylinder.Specification?.TestPressurePascals is not double test)
        {
            Skip(FillRuleKind.TestPressureAt65C, "the cylinder's test pressure is not known");
            return ratio;
        }

        double limit = test + FillFigures.TestPressureAllowance;
        if (DensityAt(FillRuleKind.TestPressureAt65C, FillFigures.TestTemperature, limit) is double density)
        {
            Add(FillRuleKind.TestPressureAt65C, FillFigures.TestPressureAt65C, density, $"ρ(65 °C, {Text(limit / 1e5)} bar absolute) = {Text(density)} kg/m³");
            ratio ??= density;
        }

        return ratio;
    }

    private void AddListedFillingRatio(double? general)
    {
        if (!_places.Has(FillRuleKind.ListedFillingRatio))
        {
            return;
        }

        double? testBar = _cylinder.Specification?.TestPressurePascals / 1e5;
        if (ListedFillingRatio.For(_model.Designation, testBar) is not ListedFillingRatio row)
        {
            Skip(FillRuleKind.ListedFillingRatio, "not listed: the general rule applies");
            return;
        }

        double density = row.KilogramsPerLiter * 1000;
        double tolerance = _places == FillRules.UnitedStates ? FillFigures.SecondOpinionTolerance : 0;
        bool stricter = general is not double rule || density < rule * (1 - tolerance);
        string comparison = general is double value
            ? $"{Text(Math.Round(((density / value) - 1) * 100, 2))} % against the general rule's {Text(value)} kg/m³"
            : "the general rule gives no figure";
        Add(
            FillRuleKind.ListedFillingRatio,
            row.Figure,
            density,
            comparison + (stricter ? ": the stricter one is applied" : ": shown as a second opinion only"),
            stricter);
    }

    private void AddListedFillingDensity()
    {
        if (!_places.Has(FillRuleKind.ListedFillingDensity))
        {
            return;
        }

        if (ListedFillingDensity.For(_model.Designation, _cylinder.ServicePressure) is ListedFillingDensity row)
        {
            double water = _volume * RecoveryCylinder.WaterDensity;
            AddMass(FillRuleKind.ListedFillingDensity, row.Figure, row.Percent / 100 * water, $"WC {Text(water)} kg", true);
        }
        else
        {
            Skip(FillRuleKind.ListedFillingDensity, "no percentage is listed for this refrigerant: not liquid-full at 55 °C applies");
        }
    }

    private void AddServicePressure()
    {
        if (!_places.Has(FillRuleKind.PressureAt55C))
        {
            return;
        }

        if (_cylinder.Specification is { IsUn: true })
        {
            Skip(FillRuleKind.PressureAt55C, "a UN/ADR cylinder has no DOT service pressure");
            Skip(FillRuleKind.PressureAt21C, "a UN/ADR cylinder has no DOT service pressure");
            return;
        }

        double service = _cylinder.ServicePressure.Pascals;
        if (FillStrength.IsListedAt55C(_cylinder, _model, _places))
        {
            Skip(FillRuleKind.PressureAt55C, "the law lists this mark for this refrigerant as a liquid");
        }
        else
        {
            AddPressure(FillRuleKind.PressureAt55C, FillFigures.PressureAt55C, FillFigures.LiquidFullTemperature, FillFigures.HighestGaugePressure(_cylinder));
        }

        AddPressure(FillRuleKind.PressureAt21C, FillFigures.PressureAt21C, FillFigures.ServiceTemperature, service);
    }

    private void AddPressure(FillRuleKind kind, RuleFigure figure, double temperature, double gauge)
    {
        double limit = gauge + FillFigures.Atmosphere;
        if (DensityAt(kind, temperature, limit) is double density)
        {
            Add(kind, figure, density, $"ρ({Text(temperature - 273.15)} °C, {Text(limit / 1e5)} bar absolute) = {Text(density)} kg/m³");
        }
    }

    private void AddRecoveredWithOil(bool apply)
    {
        if (!_places.Has(FillRuleKind.RecoveredWithOil))
        {
            return;
        }

        if (OilBearingFillingRatio.For(_model.Designation) is OilBearingFillingRatio row)
        {
            Add(FillRuleKind.RecoveredWithOil, row.Figure, row.KilogramsPerLiter * 1000, apply ? "applied as asked" : "for information", apply);
        }
        else
        {
            Skip(FillRuleKind.RecoveredWithOil, "no figure published for this refrigerant");
        }
    }

    private void AddOldRule()
    {
        if (_places.Has(FillRuleKind.EightyPercentOfWaterCapacity))
        {
            AddMass(
                FillRuleKind.EightyPercentOfWaterCapacity,
                FillFigures.EightyPercentOfWaterCapacity,
                FillFigures.EightyPercent * _cylinder.WaterCapacity.Kilograms,
                "without specific gravity: it overfills with every refrigerant lighter than water",
                false);
        }
    }

    /// <summary>Japan: V/C; C listed, else 1.05 over the specific gravity at 48 °C.</summary>
    private void AddFillingConstant()
    {
        const FillRuleKind Kind = FillRuleKind.ListedFillingConstant;
        if (!_places.Has(Kind))
        {
            return;
        }

        if (FillConstantFigures.For(_model.Designation) is (double constant, RuleFigure figure))
        {
            Add(Kind, figure, 1000 / constant, $"C = {Text(constant)} L/kg");
        }
        else if (LiquidDensity(Kind, FillConstantFigures.Temperature) is double density)
        {
            Add(Kind, FillConstantFigures.NotListed, density / FillConstantFigures.Numerator, $"ρ'(48 °C) = {Text(density)} kg/m³");
        }
    }

    /// <summary>Where a place has no figure: liquid fills no more than 80 % at 25 °C and not the whole at 60 °C; of a gas, no more than its pressure allows.</summary>
    private void AddLibraryBound()
    {
        const FillRuleKind Kind = FillRuleKind.LibraryBound;
        AddShareAt(Kind, FillFigures.LibraryShare, FillFigures.EightyPercent, FillFigures.GuidelineTemperature);
        AddNotLiquidFull(Kind, FillFigures.LibraryFull, FillFigures.VaporTemperature);
        AddPressure(Kind, FillFigures.LibraryPressure, FillFigures.LiquidFullTemperature, FillFigures.HighestGaugePressure(_cylinder));
    }

    private double? LiquidDensity(FillRuleKind kind, double temperature)
    {
        if (kind != FillRuleKind.LibraryBound && !_places.Has(kind))
        {
            return null;
        }

        if (!FillDensity.HasLiquidAt(_model, temperature))
        {
            Skip(kind, $"no liquid at {Text(temperature - 273.15)} °C: the critical temperature is {Text(_model.CriticalTemperature - 273.15)} °C");
            return null;
        }

        try
        {
            return _model.SaturationAtTemperature(temperature).Bubble.Density;
        }
        catch (PropertyRangeException e)
        {
            Skip(kind, e.Message, isOutsideEquation: true);
            return null;
        }
    }

    private double? DensityAt(FillRuleKind kind, double temperature, double pressure)
    {
        try
        {
            return FillDensity.AtPressure(_model, temperature, pressure);
        }
        catch (PropertyRangeException e)
        {
            Skip(kind, e.Message, isOutsideEquation: true);
            return null;
        }
    }

    private void Add(FillRuleKind kind, RuleFigure figure, double density, string note, bool isLimit = true) =>
        AddMass(kind, figure, _volume * density, note, isLimit);

    private void AddMass(FillRuleKind kind, RuleFigure figure, double kilograms, string note, bool isLimit) =>
        _rules.Add(new FillRule(kind, figure, kilograms, isLimit, note));

    private void Skip(FillRuleKind kind, string reason, bool isOutsideEquation = false) =>
        _notApplied.Add(new FillRuleNotApplied(kind, reason, isOutsideEquation));

    private static string Text(double value) => Require.Text(value);
}

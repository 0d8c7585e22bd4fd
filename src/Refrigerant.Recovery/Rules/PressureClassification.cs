using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>The pressure class of a refrigerant by 40 CFR 82.152, from its liquid-phase saturation pressure at 104 °F. Immutable.</summary>
/// <remarks>
/// The definitions say "below 45", "between 45 and 170", "between 170 and 355" and "above 355" psia and leave the boundaries open. Here
/// 45 psia is medium (low is "below"), 170 psia is medium (its levels are the stricter ones) and 355 psia is high (very high is "above").
/// For a blend the liquid-phase pressure is the bubble pressure.
/// </remarks>
public sealed record PressureClassification
{
    /// <summary>What a published equation of a pure refrigerant may be off in pressure. Our choice: the papers say a few tenths of a percent.</summary>
    private const double PureUncertainty = 0.005;

    /// <summary>What a blend with published mixing parameters may be off. Our choice: see the page on accuracy.</summary>
    private const double BlendUncertainty = 0.02;

    /// <summary>What a blend with estimated mixing parameters may be off: see the page on blends.</summary>
    private const double EstimatedUncertainty = 0.15;

    /// <summary>The refrigerants that 82.152 names as examples of their class: no pressure of ours overrules that.</summary>
    private static readonly string[] NamedInRule =
    [
        "R-11", "R-123", "R-113", "R-245fa", "R-114", "R-124", "R-12", "R-134a", "R-500", "R-22", "R-407A", "R-407C", "R-410A", "R-502", "R-13",
        "R-23", "R-503", "R-508A", "R-508B",
    ];

    private readonly double? _pressure;
    private readonly double _uncertainty;

    private PressureClassification(
        PressureClass byLetter, PressureClass customary, double? pressure, double uncertainty, PressureClass? other, IReadOnlyList<Finding> findings)
    {
        ByLetter = byLetter;
        Customary = customary;
        _pressure = pressure;
        _uncertainty = uncertainty;
        AcrossTheBorder = other;
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The class by the letter of the definition.</summary>
    public PressureClass ByLetter { get; }

    /// <summary>The class that the trade uses; another one than <see cref="ByLetter"/> for R-32 only.</summary>
    public PressureClass Customary { get; }

    /// <summary>Absolute liquid-phase saturation pressure at 104 °F; null where the critical temperature is below that.</summary>
    public Pressure? PressureAt104F => _pressure is double pascals ? new Pressure(pascals, PressureUnit.Pascal) : null;

    /// <summary>By how much that pressure may be off, plus or minus: by the quality of the refrigerant's model.</summary>
    public Ratio PressureUncertainty => new(_uncertainty, RatioUnit.DecimalFraction);

    /// <summary>
    /// The class on the other side of a border that is nearer than the pressure may be off; null where the class is certain, or the definition
    /// names the refrigerant.
    /// </summary>
    public PressureClass? AcrossTheBorder { get; }

    /// <summary>Where letter and custom differ, and where the class is not certain.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The class of a refrigerant.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    /// <exception cref="PropertyRangeException">The fluid's equation does not cover 104 °F.</exception>
    public static PressureClassification For(Fluid fluid)
    {
        PropertyModel model = Require.NotNull(fluid, nameof(fluid)).Model;
        if (model.CriticalTemperature < EvacuationFigures.ClassTemperature)
        {
            return new PressureClassification(PressureClass.VeryHigh, PressureClass.VeryHigh, null, 0, null, []);
        }

        double pressure = model.SaturationAtTemperature(EvacuationFigures.ClassTemperature).Bubble.Pressure;
        PressureClass letter = ClassAt(pressure);
        if (model.Designation == EvacuationFigures.CustomarilyHigh && letter == PressureClass.VeryHigh)
        {
            return new PressureClassification(letter, PressureClass.High, pressure, PureUncertainty, null, [ByCustom(model, pressure)]);
        }

        double uncertainty = fluid.Quality == ModelQuality.Estimated ? EstimatedUncertainty : fluid.IsBlend ? BlendUncertainty : PureUncertainty;
        PressureClass? other = Array.IndexOf(NamedInRule, model.Designation) >= 0 ? null : Across(pressure, letter, uncertainty);
        return new PressureClassification(
            letter, letter, pressure, uncertainty, other, other is PressureClass across ? [Uncertain(model, pressure, letter, across, uncertainty)] : []);
    }

    private static PressureClass? Across(double pressure, PressureClass letter, double uncertainty)
    {
        PressureClass low = ClassAt(pressure * (1 - uncertainty));
        PressureClass high = ClassAt(pressure * (1 + uncertainty));
        return low != letter ? low : high != letter ? high : null;
    }

    private static Finding Uncertain(PropertyModel model, double pressure, PressureClass letter, PressureClass across, double uncertainty)
    {
        double border = (PressureClass)Math.Min((int)letter, (int)across) switch
        {
            PressureClass.Low => EvacuationFigures.LowLimit,
            PressureClass.Medium => EvacuationFigures.MediumLimit,
            _ => EvacuationFigures.HighLimit,
        };
        return new Finding(
            RuleCodes.ClassUncertain,
            Severity.Caution,
            EvacuationFigures.Classes.Source,
            $"{model.Designation} has {FindingValue.Pascals("pressure", pressure)} at {FindingValue.Kelvins("temperature", EvacuationFigures.ClassTemperature)}: class {FindingValue.Text("class", letter.ToString())}, but {FindingValue.PressureDifference("margin", new Pressure(Math.Abs(pressure - border), PressureUnit.Pascal))} from the border to {FindingValue.Text("other class", across.ToString())}, and that pressure may be off by {FindingValue.Fraction("uncertainty", uncertainty)}.",
            $"Take the stricter level of the two, or set the class from the maker's data.");
    }

    private static Finding ByCustom(PropertyModel model, double pressure) => new(
        RuleCodes.ClassByCustom,
        Severity.Caution,
        EvacuationFigures.Classes.Source,
        $"{model.Designation} has {FindingValue.Pascals("pressure", pressure)} at {FindingValue.Kelvins("class temperature", EvacuationFigures.ClassTemperature)}, above {FindingValue.Pascals("class border", EvacuationFigures.HighLimit)}: very high-pressure by the letter of the definition, though the trade calls it high-pressure, which asks for 10 inHg of vacuum at 200 lb and above. No published ruling is known; the caller may set the class.");

    internal static PressureClass ClassAt(double pascals) =>
        pascals < EvacuationFigures.LowLimit ? PressureClass.Low
        : pascals <= EvacuationFigures.MediumLimit ? PressureClass.Medium
        : pascals <= EvacuationFigures.HighLimit ? PressureClass.High
        : PressureClass.VeryHigh;

    /// <summary>Both classes.</summary>
    public override string ToString() => $"{ByLetter} by the letter, {Customary} by custom";
}

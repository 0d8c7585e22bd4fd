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
public sealed class PressureClassification
{
    private readonly double? _pressure;

    private PressureClassification(PressureClass byLetter, PressureClass customary, double? pressure, IReadOnlyList<Finding> findings)
    {
        ByLetter = byLetter;
        Customary = customary;
        _pressure = pressure;
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The class by the letter of the definition.</summary>
    public PressureClass ByLetter { get; }

    /// <summary>The class that the trade uses; another one than <see cref="ByLetter"/> for R-32 only.</summary>
    public PressureClass Customary { get; }

    /// <summary>Absolute liquid-phase saturation pressure at 104 °F; null where the critical temperature is below that.</summary>
    public Pressure? PressureAt104F => _pressure is double pascals ? new Pressure(pascals, PressureUnit.Pascal) : null;

    /// <summary>Where letter and custom differ.</summary>
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
            return new PressureClassification(PressureClass.VeryHigh, PressureClass.VeryHigh, null, []);
        }

        double pressure = model.SaturationAtTemperature(EvacuationFigures.ClassTemperature).Bubble.Pressure;
        PressureClass letter = ClassAt(pressure);
        if (model.Designation != EvacuationFigures.CustomarilyHigh || letter != PressureClass.VeryHigh)
        {
            return new PressureClassification(letter, letter, pressure, []);
        }

        return new PressureClassification(letter, PressureClass.High, pressure,
        [
            new Finding(
                Severity.Caution,
                FindingSubject.EvacuationLevel,
                $"{model.Designation} has {Require.Text(Math.Round(pressure / EvacuationFigures.PascalsPerPsi, 1))} psia at 104 °F, above 355 psia: very high-pressure by the letter of the "
                + "definition, though the trade calls it high-pressure, which asks for 10 inHg of vacuum at 200 lb and above. No published ruling is known; the caller may set the class.",
                EvacuationFigures.Classes.Source),
        ]);
    }

    internal static PressureClass ClassAt(double pascals) =>
        pascals < EvacuationFigures.LowLimit ? PressureClass.Low
        : pascals <= EvacuationFigures.MediumLimit ? PressureClass.Medium
        : pascals <= EvacuationFigures.HighLimit ? PressureClass.High
        : PressureClass.VeryHigh;

    /// <summary>Both classes.</summary>
    public override string ToString() => $"{ByLetter} by the letter, {Customary} by custom";
}

using System;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What a calibration starts from. Immutable.</summary>
public sealed record CalibrationOptions
{
    private const double MostRelative = 0.9;

    /// <summary>For an initializer.</summary>
    public CalibrationOptions()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="tolerances">See <see cref="Tolerances"/>.</param>
    /// <param name="metalTolerance">See <see cref="MetalTolerance"/>.</param>
    /// <param name="hoseTolerance">See <see cref="HoseTolerance"/>.</param>
    /// <param name="instruments">See <see cref="Instruments"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public CalibrationOptions(
        InputTolerances? tolerances = null,
        Ratio? metalTolerance = null,
        Ratio? hoseTolerance = null,
        Instruments? instruments = null)
    {
        Tolerances = tolerances ?? Tolerances;
        MetalTolerance = metalTolerance ?? MetalTolerance;
        HoseTolerance = hoseTolerance ?? HoseTolerance;
        Instruments = instruments ?? Instruments;
    }

    /// <summary>
    /// How well the job as told is known: charge and displacement to 25 %, volume to 60 %, heat exchange to 90 %, temperature to 2 K by default, wider than
    /// for a plan, since the log is to tell (common practice, no source). The tolerances of gauge and scale are not used: see <see cref="Instruments"/>.
    /// </summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public InputTolerances Tolerances { get; init => field = Require.NotNull(value, nameof(Tolerances)); } = new()
    {
        Charge = new Ratio(25, RatioUnit.Percent),
        Displacement = new Ratio(25, RatioUnit.Percent),
        InternalVolume = new Ratio(60, RatioUnit.Percent),
        HeatExchange = new Ratio(90, RatioUnit.Percent),
    };

    /// <summary>Tolerance of the metal's heat capacity, 0 to 90 %; 90 % by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio MetalTolerance { get; init => field = Require.InRange(value, 0, MostRelative, nameof(MetalTolerance)); } = new(90, RatioUnit.Percent);

    /// <summary>Tolerance of the hoses' resistance, 0 to 90 %; 90 % by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio HoseTolerance { get; init => field = Require.InRange(value, 0, MostRelative, nameof(HoseTolerance)); } = new(90, RatioUnit.Percent);

    /// <summary>What the readings were taken with.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public Instruments Instruments { get; init => field = Require.NotNull(value, nameof(Instruments)); } = new();

    /// <summary>Tolerances and instruments, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Tolerances}; metal {MetalTolerance.Percent:G4} %, hoses {HoseTolerance.Percent:G4} %; {Instruments}");
}

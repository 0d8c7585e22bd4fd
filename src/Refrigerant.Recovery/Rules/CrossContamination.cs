using System;
using Refrigerant.Recovery.Residuals;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>What a machine in one state carries of the old refrigerant into what is recovered next. An estimate. Immutable.</summary>
public sealed record CrossContamination
{
    private readonly double _recovered;

    internal CrossContamination(double inSpaces, MassRange inOil, double recovered)
    {
        _recovered = recovered;
        InSpaces = new Mass(inSpaces, MassUnit.Kilogram);
        InOil = inOil;
        Trapped = new MassRange(inSpaces, inSpaces, inSpaces).Plus(inOil);
    }

    /// <summary>Old refrigerant as vapor and liquid in machine and hoses.</summary>
    public Mass InSpaces { get; }

    /// <summary>Old refrigerant dissolved in the machine's oil; zero where no oil was given.</summary>
    public MassRange InOil { get; }

    /// <summary>Both together: taken to end up in the next cylinder, all of it.</summary>
    public MassRange Trapped { get; }

    /// <summary>Whether the oil may hold more than its upper bound says: its pressure is too near saturation for the rule.</summary>
    public bool IsLowerBound => Trapped.IsLowerBound;

    /// <summary>Old refrigerant as a share of what the next cylinder receives, by mass: best estimate.</summary>
    public Ratio MassFraction => Share(Trapped.BestKilograms);

    /// <summary>The same by the upper bound, on which the verdict rests.</summary>
    public Ratio HighestMassFraction => Share(Trapped.HighKilograms);

    /// <summary>Whether the upper bound stays within what the purity standard allows of other volatile impurities (AHRI 700: 0.5 % by mass).</summary>
    public bool IsWithinLimit => !IsLowerBound && HighestMassFraction.DecimalFractions <= PurityFigures.VolatileImpurities;

    /// <summary>
    /// The least mass to recover next for the upper bound to stay within the limit: m·(1 − w)/w, w the limit; null where there is no upper bound.
    /// </summary>
    public Mass? LeastRecovered => IsLowerBound
        ? null
        : new Mass(Trapped.HighKilograms * ((1 - PurityFigures.VolatileImpurities) / PurityFigures.VolatileImpurities), MassUnit.Kilogram);

    /// <summary>Mass and share, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Trapped}, {MassFraction.Percent:G3} % by mass (up to {HighestMassFraction.Percent:G3} %)");

    private Ratio Share(double trapped) => new(trapped / (trapped + _recovered), RatioUnit.DecimalFraction);
}

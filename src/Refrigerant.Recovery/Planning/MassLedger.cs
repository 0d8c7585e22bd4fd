using System;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>Where every kilogram of the charge is after the job. The terms add up to the charge. Immutable.</summary>
public sealed record MassLedger
{
    internal MassLedger(double charge, double inCylinders, double vapor, double liquid, double inOil, double inHosesAndMachine, double released, double foreign = 0)
    {
        Charge = Of(charge);
        InCylinders = Of(inCylinders);
        VaporInAppliance = Of(vapor);
        LiquidInAppliance = Of(liquid);
        InOil = Of(inOil);
        InHosesAndMachine = Of(inHosesAndMachine);
        Released = Of(released);
        ForeignCarriedOver = Of(foreign);
        Unexplained = Of(charge - (inCylinders + vapor + liquid + inOil + inHosesAndMachine + released));
    }

    /// <summary>The charge before the job.</summary>
    public Mass Charge { get; }

    /// <summary>Received by cylinders.</summary>
    public Mass InCylinders { get; }

    /// <summary>Left in the appliance as vapor.</summary>
    public Mass VaporInAppliance { get; }

    /// <summary>Left in the appliance as liquid.</summary>
    public Mass LiquidInAppliance { get; }

    /// <summary>Left dissolved in the appliance's oil (an estimate).</summary>
    public Mass InOil { get; }

    /// <summary>Left in hoses and machine.</summary>
    public Mass InHosesAndMachine { get; }

    /// <summary>Released when connections are opened.</summary>
    public Mass Released { get; }

    /// <summary>Other refrigerant that the machine carries over into the cylinders from its last job, best estimate; not a part of the charge.</summary>
    public Mass ForeignCarriedOver { get; }

    /// <summary>Charge less all terms: rounding only.</summary>
    public Mass Unexplained { get; }

    /// <summary>Everything left in the appliance: vapor, liquid and what the oil holds.</summary>
    public Mass InAppliance => Of(VaporInAppliance.Kilograms + LiquidInAppliance.Kilograms + InOil.Kilograms);

    /// <summary>Share of the charge that is in cylinders.</summary>
    public Ratio RecoveredShare => new(InCylinders.Kilograms / Charge.Kilograms, RatioUnit.DecimalFraction);

    /// <summary>The terms, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Charge.Kilograms:F3} kg = {InCylinders.Kilograms:F3} in cylinders + {InAppliance.Kilograms:F3} in the appliance + {InHosesAndMachine.Kilograms:F3} in hoses and machine + {Released.Kilograms:F4} released");

    private static Mass Of(double kilograms) => new(kilograms, MassUnit.Kilogram);
}

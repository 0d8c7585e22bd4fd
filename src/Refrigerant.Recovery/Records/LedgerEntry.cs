using System;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records;

/// <summary>Where every kilogram of the charge is after the job; see <see cref="MassLedger"/>. Masses in kg. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<LedgerEntry>))]
public sealed record LedgerEntry
{
    /// <summary>The charge before the job.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("chargeKilograms")]
    public required double ChargeKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(ChargeKilograms)); }

    /// <summary>Received by cylinders; below zero where more vapor was pushed out of them than came back, or by the tolerance of the simulation where nothing flowed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("inCylindersKilograms")]
    public required double InCylindersKilograms { get; init => field = Require.Finite(value, "kg", nameof(InCylindersKilograms)); }

    /// <summary>Left in the appliance as vapor.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("vaporInApplianceKilograms")]
    public required double VaporInApplianceKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(VaporInApplianceKilograms)); }

    /// <summary>Left in the appliance as liquid.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("liquidInApplianceKilograms")]
    public required double LiquidInApplianceKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(LiquidInApplianceKilograms)); }

    /// <summary>Left dissolved in the appliance's oil (an estimate).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("inOilKilograms")]
    public required double InOilKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(InOilKilograms)); }

    /// <summary>Left in hoses and machine.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("inHosesAndMachineKilograms")]
    public required double InHosesAndMachineKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(InHosesAndMachineKilograms)); }

    /// <summary>Released when connections are opened.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("releasedKilograms")]
    public required double ReleasedKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(ReleasedKilograms)); }

    /// <summary>Charge less all other terms: rounding in a plan, errors of the readings and of the charge in a record of measurements.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("unexplainedKilograms")]
    public required double UnexplainedKilograms { get; init => field = Require.Finite(value, "kg", nameof(UnexplainedKilograms)); }

    internal static LedgerEntry From(MassLedger ledger) => new()
    {
        ChargeKilograms = Plain.Kilograms(ledger.Charge),
        InCylindersKilograms = Plain.Kilograms(ledger.InCylinders),
        VaporInApplianceKilograms = Plain.Kilograms(ledger.VaporInAppliance),
        LiquidInApplianceKilograms = Plain.Kilograms(ledger.LiquidInAppliance),
        InOilKilograms = Plain.Kilograms(ledger.InOil),
        InHosesAndMachineKilograms = Plain.Kilograms(ledger.InHosesAndMachine),
        ReleasedKilograms = Plain.Kilograms(ledger.Released),
        UnexplainedKilograms = Plain.Kilograms(ledger.Unexplained),
    };

    /// <summary>Charge and what is in cylinders.</summary>
    public override string ToString() => FormattableString.Invariant($"{ChargeKilograms:G7} kg, {InCylindersKilograms:G7} kg of it in cylinders");
}

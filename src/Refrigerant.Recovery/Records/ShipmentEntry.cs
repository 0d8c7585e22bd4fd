using System;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>Refrigerant sent away: 40 CFR 82.156(a)(3) asks for quantity by type, recipient and date. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<ShipmentEntry>))]
public sealed record ShipmentEntry
{
    /// <summary>For an initializer.</summary>
    public ShipmentEntry()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="refrigerant">See <see cref="Refrigerant"/>.</param>
    /// <param name="kilograms">See <see cref="Kilograms"/>.</param>
    /// <param name="purpose">See <see cref="Purpose"/>.</param>
    /// <param name="recipient">See <see cref="Recipient"/>.</param>
    /// <param name="date">See <see cref="Date"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public ShipmentEntry(
        string refrigerant,
        double kilograms,
        ShipmentPurpose purpose,
        string recipient,
        DateTime date)
    {
        Refrigerant = refrigerant;
        Kilograms = kilograms;
        Purpose = purpose;
        Recipient = recipient;
        Date = date;
    }

    /// <summary>Type of the refrigerant sent (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    /// <exception cref="ArgumentException">Blank.</exception>
    [JsonPropertyName("refrigerant")]
    public required string Refrigerant { get; init => field = Require.NotEmpty(value, nameof(Refrigerant)); }

    /// <summary>Quantity sent, kg (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("kilograms")]
    public required double Kilograms { get; init => field = Require.NotNegative(value, "kg", nameof(Kilograms)); }

    /// <summary>Whether it is for reclamation or destruction (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of the enumeration.</exception>
    [JsonPropertyName("purpose")]
    public required ShipmentPurpose Purpose { get; init => field = Require.Defined(value, nameof(Purpose)); }

    /// <summary>To whom (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    /// <exception cref="ArgumentException">Blank.</exception>
    [JsonPropertyName("recipient")]
    public required string Recipient { get; init => field = Require.NotEmpty(value, nameof(Recipient)); }

    /// <summary>The day of transfer (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentException">No day: the default of its type.</exception>
    [JsonPropertyName("date")]
    public required DateTime Date { get; init => field = Require.Given(value, nameof(Date)); }

    /// <summary>Date, mass and purpose.</summary>
    public override string ToString() => FormattableString.Invariant($"{Date:yyyy-MM-dd}: {Kilograms:G7} kg of {Refrigerant} for {Purpose}");
}

using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>Refrigerant sent away: 40 CFR 82.156(a)(3) asks for quantity by type, recipient and date. Immutable.</summary>
public sealed record ShipmentEntry
{
    /// <summary>Type of the refrigerant sent (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public required string Refrigerant { get; init => field = Require.NotNull(value, nameof(Refrigerant)); }

    /// <summary>Quantity sent, kg (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    public required double Kilograms { get; init => field = Require.NotNegative(value, "kg", nameof(Kilograms)); }

    /// <summary>Whether it is for reclamation or destruction (40 CFR 82.156(a)(3)).</summary>
    public required ShipmentPurpose Purpose { get; init; }

    /// <summary>To whom (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public required string Recipient { get; init => field = Require.NotNull(value, nameof(Recipient)); }

    /// <summary>The day of transfer (40 CFR 82.156(a)(3)).</summary>
    public required DateTime Date { get; init; }
}

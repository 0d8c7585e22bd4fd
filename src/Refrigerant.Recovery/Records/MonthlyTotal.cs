using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// What was recovered of one refrigerant in one calendar month: the total that 40 CFR 82.156(a)(3) asks for by type, over all disposed
/// appliances. Immutable.
/// </summary>
public sealed record MonthlyTotal
{
    private MonthlyTotal()
    {
    }

    /// <summary>The year.</summary>
    public int Year { get; private init; }

    /// <summary>The month, 1 to 12.</summary>
    public int Month { get; private init; }

    /// <summary>Type of the refrigerant.</summary>
    public string Refrigerant { get; private init; } = string.Empty;

    /// <summary>Total recovered, kg.</summary>
    public double Kilograms { get; private init; }

    /// <summary>How many records it adds up.</summary>
    public int Records { get; private init; }

    /// <summary>Adds up records by month and refrigerant, in the order of month and then of designation.</summary>
    /// <param name="records">The records.</param>
    /// <param name="disposalsOnly">Whether only disposals count, as the regulation asks; true by default.</param>
    /// <exception cref="ArgumentNullException">The records or one of them is null.</exception>
    public static IReadOnlyList<MonthlyTotal> From(IEnumerable<RecoveryRecord> records, bool disposalsOnly = true) =>
    [
        .. Require.NotNull(records, nameof(records))
            .Select((record, i) => record ?? throw new ArgumentNullException(nameof(records), FormattableString.Invariant($"records[{i}] is null.")))
            .Where(record => record.IsDisposal || !disposalsOnly)
            .GroupBy(record => (record.Date.Year, record.Date.Month, record.Refrigerant))
            .OrderBy(group => group.Key.Year)
            .ThenBy(group => group.Key.Month)
            .ThenBy(group => group.Key.Refrigerant, StringComparer.Ordinal)
            .Select(group => new MonthlyTotal
            {
                Year = group.Key.Year,
                Month = group.Key.Month,
                Refrigerant = group.Key.Refrigerant,
                Kilograms = group.Sum(record => record.RecoveredKilograms),
                Records = group.Count(),
            }),
    ];

    /// <summary>Month, refrigerant and mass.</summary>
    public override string ToString() => FormattableString.Invariant($"{Year:D4}-{Month:D2}: {Kilograms:G7} kg of {Refrigerant} in {Records} records");
}

using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>How many cylinders of one kind a charge needs. Immutable.</summary>
public sealed record CylinderCount
{
    private const int MostCylinders = 1_000_000;

    /// <summary>A remainder below this share of one filling is rounding, not another cylinder.</summary>
    private const double Rounding = 1e-9;

    private readonly double _last;

    internal CylinderCount(FillLimit limit, double charge)
    {
        Limit = limit;
        List<Finding> findings = [.. limit.Findings];
        double room = limit.Room.Kilograms;
        if (room > 0)
        {
            double count = Math.Ceiling((charge / room) - Rounding);
            Require.InRange(count, 0, MostCylinders, "cylinders for this charge", nameof(charge));
            Count = Math.Max(1, (int)count);
            _last = Math.Min(room, charge - ((Count.Value - 1) * room));
        }
        else
        {
            findings.Add(new Finding(
                CylinderCodes.NoRoom,
                Severity.Stop,
                limit.GoverningRule.Source,
                $"{limit.Cylinder.Label} has no room left: no number of cylinders with that content holds {FindingValue.Kilograms("charge", charge)}."));
        }

        Findings = Require.Copy(findings, nameof(findings));
        IsAllowed = findings.All(finding => finding.Severity != Severity.Stop);
    }

    /// <summary>The number of cylinders; null where the cylinder has no room.</summary>
    public int? Count { get; }

    /// <summary>What each cylinder but the last takes.</summary>
    public Mass FillEach => Limit.Room;

    /// <summary>What the last cylinder takes; zero where there is no number.</summary>
    public Mass FillLast => new(_last, MassUnit.Kilogram);

    /// <summary>The limit of one cylinder.</summary>
    public FillLimit Limit { get; }

    /// <summary>Whether nothing forbids filling such a cylinder.</summary>
    public bool IsAllowed { get; }

    /// <summary>The findings on one cylinder, and on their number.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>How many, and what goes into each.</summary>
    public override string ToString() => FormattableString.Invariant($"{(Count is int count ? count.ToString(System.Globalization.CultureInfo.InvariantCulture) : "no number of")} cylinders of {FillEach.Kilograms:G7} kg each");
}

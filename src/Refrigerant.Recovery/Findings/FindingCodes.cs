using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Findings;

/// <summary>Every code that a finding of the library can have, with its trigger: the page of findings in the documentation is made from it.</summary>
public static class FindingCodes
{
    private static readonly Lazy<Dictionary<string, FindingCode>> ById = new(() => All!.ToDictionary(code => code.Id, StringComparer.Ordinal));

    /// <summary>The codes, in the order of the layers that raise them.</summary>
    public static IReadOnlyList<FindingCode> All { get; } =
    [
        .. CylinderCodes.All,
        .. StageCodes.All,
        .. ResidualCodes.All,
        .. RuleCodes.All,
        .. PlanCodes.All,
        .. ReadingCodes.All,
    ];

    /// <summary>The code of that name; null where the library has none.</summary>
    /// <param name="id">Such as "cylinder-over-limit".</param>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public static FindingCode? Find(string id) => ById.Value.TryGetValue(Require.NotNull(id, nameof(id)), out FindingCode? code) ? code : null;
}

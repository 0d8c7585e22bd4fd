using System;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Rules;

/// <summary>Whether two refrigerants may meet in one cylinder.</summary>
public static class RefrigerantMixing
{
    /// <summary>The finding that forbids it; null where both are the same refrigerant.</summary>
    /// <param name="held">What is there.</param>
    /// <param name="added">What would be added.</param>
    /// <exception cref="System.ArgumentNullException">A fluid is null.</exception>
    public static Finding? Check(Fluid held, Fluid added)
    {
        Require.NotNull(held, nameof(held));
        Require.NotNull(added, nameof(added));
        if (held.Designation == added.Designation)
        {
            return null;
        }

        bool oilsDiffer = (RefrigerantFacts.For(held).Oils & RefrigerantFacts.For(added).Oils) == OilFamilies.None;
        return new Finding(
            RuleCodes.WouldMix,
            Severity.Stop,
            Sources.CommonPractice,
            $"{FindingValue.Text("added", added.Designation)} would meet {FindingValue.Text("held", held.Designation)}: a mixed content can only be destroyed.",
            oilsDiffer ? (FormattableString)$"Their customary oils differ too." : null);
    }
}

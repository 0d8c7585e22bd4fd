using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>The blends as theory data.</summary>
internal static class BlendCases
{
    public static IReadOnlyList<MixtureModel> Models { get; } = [.. Fluid.All.Select(fluid => fluid.Model).OfType<MixtureModel>()];

    public static IEnumerable<object[]> All => Models.Select(model => new object[] { model.Designation });

    public static MixtureModel Model(string blend) => (MixtureModel)Fluid.Get(blend).Model;

    public static KeyValuePair<string, double> Part(string designation, double fraction) => new(designation, fraction);
}

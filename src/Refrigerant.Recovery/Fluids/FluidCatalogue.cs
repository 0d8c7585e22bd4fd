using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;

namespace Refrigerant.Recovery.Fluids;

/// <summary>The fluids that the package carries, found by designation.</summary>
internal static class FluidCatalogue
{
    public static IReadOnlyList<Fluid> All { get; } = [];

    public static Fluid Get(string designation) => throw new UnknownFluidException(designation, [], nameof(designation));

    public static bool TryGet(string? designation, [NotNullWhen(true)] out Fluid? fluid)
    {
        fluid = null;
        return false;
    }
}

using System.Runtime.CompilerServices;

namespace Refrigerant.Recovery.Numerics;

/// <summary>How inner loops are compiled.</summary>
internal static class Jit
{
    /// <summary>
    /// Compiled with full optimization at once, so that the first use of a fluid does not run its thousands of evaluations in unoptimized code.
    /// The number is that of MethodImplOptions.AggressiveOptimization, which .NET Standard 2.0 does not name and ignores.
    /// </summary>
    public const MethodImplOptions Hot = (MethodImplOptions)512;
}

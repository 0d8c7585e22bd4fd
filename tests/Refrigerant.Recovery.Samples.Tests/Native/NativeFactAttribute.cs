using System.IO;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Native;

/// <summary>A test of the C programs.</summary>
internal sealed class NativeFactAttribute : FactAttribute
{
    /// <summary>Skips where the C programs were not built.</summary>
    public NativeFactAttribute() => Skip = File.Exists(Values) ? null : "The C programs are not built: run samples/Native/build, which needs a C compiler and CMake.";

    /// <summary>The program that prints every number of the interface.</summary>
    public static string Values { get; } = Repository.At("samples", "Native", "bin", "c", "values");
}

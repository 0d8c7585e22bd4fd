using System.IO;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Scripts;

/// <summary>A test of the F# script, which refers to the library as it was built for release.</summary>
internal sealed class FSharpFactAttribute : FactAttribute
{
    /// <summary>Skips where that was not done.</summary>
    public FSharpFactAttribute() => Skip =
        File.Exists(Repository.At("src", "Refrigerant.Recovery", "bin", "Release", "net8.0", "Refrigerant.Recovery.dll"))
            ? null
            : "The library is not built for release: run dotnet build -c Release src/Refrigerant.Recovery.";
}

using System.Reflection;

namespace Refrigerant.Recovery.Records;

/// <summary>The version of this library, without the commit that a build may add.</summary>
internal static class Library
{
    public static string Version { get; } =
        (typeof(Library).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown").Split('+')[0];
}

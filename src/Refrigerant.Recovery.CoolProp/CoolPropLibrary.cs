using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.InteropServices;
using Refrigerant.Recovery.CoolProp.Native;

namespace Refrigerant.Recovery.CoolProp;

/// <summary>
/// A loaded CoolProp shared library. It is found by a path, by the environment variable <see cref="PathVariable"/> or by the system's
/// loader, and is never downloaded. It stays loaded until the process ends. Thread-safe: calls into it are made one at a time.
/// </summary>
public sealed unsafe class CoolPropLibrary
{
    /// <summary>The environment variable that holds the path of the shared library: <c>COOLPROP_LIBRARY</c>.</summary>
    public const string PathVariable = "COOLPROP_LIBRARY";

    private const int TextLength = 4096;

    private CoolPropLibrary(string location, NativeApi api, IndexTable indices, string version)
    {
        Location = location;
        Api = api;
        Indices = indices;
        Version = version;
    }

    /// <summary>The path, or the name by which the system's loader found it.</summary>
    public string Location { get; }

    /// <summary>The version that the library says it is, such as "6.6.0".</summary>
    public string Version { get; }

    internal NativeApi Api { get; }

    internal IndexTable Indices { get; }

    /// <summary>Loads the library from a file.</summary>
    /// <param name="path">The path of the shared library; a relative one counts from the current folder.</param>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or blank.</exception>
    /// <exception cref="CoolPropUnavailableException">There is no such file, or it is for another processor, damaged, too old or not CoolProp.</exception>
    public static CoolPropLibrary Open(string path)
    {
        if (string.IsNullOrWhiteSpace(path))
        {
            throw new ArgumentException("path is blank; it must be the path of CoolProp's shared library.", nameof(path));
        }

        return Open(path, NativeApi.LongIs32Bits);
    }

    /// <summary>
    /// Loads the library that <see cref="PathVariable"/> names; where that is not set, the one that the application's folder or the system's
    /// loader has (CoolProp.dll, libCoolProp.so, libCoolProp.dylib).
    /// </summary>
    /// <exception cref="CoolPropUnavailableException">
    /// None is found, or what is found is for another processor, damaged, too old or not CoolProp. Where the variable is set nothing else is tried.
    /// </exception>
    public static CoolPropLibrary Open()
    {
        string? path = Environment.GetEnvironmentVariable(PathVariable);
        if (!string.IsNullOrWhiteSpace(path))
        {
            try
            {
                return Open(path!);
            }
            catch (CoolPropUnavailableException failure)
            {
                throw new CoolPropUnavailableException($"{PathVariable} is \"{path}\". {failure.Attempts}");
            }
        }

        NativeModule module = NativeModule.FromSystem(out string reason)
            ?? throw new CoolPropUnavailableException($"{PathVariable} is not set. {reason}");
        return Bind(module, NativeApi.LongIs32Bits);
    }

    /// <summary>Loads the library as <see cref="Open()"/> does, without an exception where there is none.</summary>
    /// <param name="library">The library, or null.</param>
    /// <param name="reason">Why there is none, or null.</param>
    /// <returns>Whether it was loaded.</returns>
    public static bool TryOpen([NotNullWhen(true)] out CoolPropLibrary? library, [NotNullWhen(false)] out string? reason)
    {
        try
        {
            library = Open();
            reason = null;
            return true;
        }
        catch (CoolPropUnavailableException failure)
        {
            library = null;
            reason = failure.Message;
            return false;
        }
    }

    /// <summary>The location and version.</summary>
    public override string ToString() => $"CoolProp {Version} ({Location})";

    internal static CoolPropLibrary Open(string path, bool longIs32Bits)
    {
        NativeModule module = NativeModule.FromFile(path, out string reason) ?? throw new CoolPropUnavailableException(reason);
        return Bind(module, longIs32Bits);
    }

    /// <summary>A text that CoolProp has of a fluid, such as its "BibTeX-EOS"; null where it has none.</summary>
    internal string? FluidText(string fluid, string parameter)
    {
        byte* output = stackalloc byte[TextLength];
        output[0] = 0;
        lock (NativeApi.Gate)
        {
            fixed (byte* name = NativeText.Encode(fluid))
            fixed (byte* key = NativeText.Encode(parameter))
            {
                return Api.FluidText(name, key, output, TextLength) ? NativeText.Decode(output, TextLength) : null;
            }
        }
    }

    private static CoolPropLibrary Bind(NativeModule module, bool longIs32Bits)
    {
        if (RuntimeInformation.IsOSPlatform(OSPlatform.Windows) && RuntimeInformation.ProcessArchitecture == Architecture.X86)
        {
            throw new CoolPropUnavailableException(
                "This is a 32-bit Windows process, where CoolProp's calling convention depends on the build: use a 64-bit process.");
        }

        NativeApi api = NativeApi.Bind(module, longIs32Bits, out IReadOnlyList<string> missing);
        if (missing.Count > 0)
        {
            throw new CoolPropUnavailableException(
                $"{module.Location} is not CoolProp or is too old: it lacks {string.Join(", ", missing)}.");
        }

        string version = GlobalText(api, "version") ?? "of unknown version";
        var indices = new IndexTable(api);
        if (indices.Unknown.Count > 0)
        {
            throw new CoolPropUnavailableException(
                $"{module.Location} (CoolProp {version}) is too old: it does not know {string.Join(", ", indices.Unknown)}.");
        }

        return new CoolPropLibrary(module.Location, api, indices, version);
    }

    private static string? GlobalText(NativeApi api, string parameter)
    {
        byte* output = stackalloc byte[TextLength];
        output[0] = 0;
        lock (NativeApi.Gate)
        {
            fixed (byte* key = NativeText.Encode(parameter))
            {
                return api.GlobalText(key, output, TextLength) ? NativeText.Decode(output, TextLength) : null;
            }
        }
    }
}

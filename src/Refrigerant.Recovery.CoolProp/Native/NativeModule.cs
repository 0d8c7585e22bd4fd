using System.IO;
using System.Runtime.InteropServices;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>A shared library in this process. It stays loaded until the process ends: CoolProp keeps states of its own.</summary>
internal sealed class NativeModule
{
    private readonly nint _handle;

    private NativeModule(nint handle, string location)
    {
        _handle = handle;
        Location = location;
    }

    /// <summary>The file's name on this system, without a folder.</summary>
    public static string DefaultFileName =>
        RuntimeInformation.IsOSPlatform(OSPlatform.Windows) ? "CoolProp.dll"
        : RuntimeInformation.IsOSPlatform(OSPlatform.OSX) ? "libCoolProp.dylib"
        : "libCoolProp.so";

    /// <summary>The path or the loader's name that it was loaded by.</summary>
    public string Location { get; }

    /// <summary>Loads one file.</summary>
    /// <param name="path">Its path; a relative one counts from the current folder.</param>
    /// <param name="failure">How the attempt ended where null is returned.</param>
    public static NativeModule? FromFile(string path, out string failure)
    {
        string full = Path.GetFullPath(path);
        if (!File.Exists(full))
        {
            failure = $"There is no file {full}.";
            return null;
        }

        if (!SystemLoader.TryLoad(full, out nint handle, out string text))
        {
            string image = ModuleImage.Describe(full) is string description ? $" The file is {description}." : " The file is no shared library.";
            failure = $"{full} could not be loaded into this {RuntimeInformation.ProcessArchitecture} process: {text.TrimEnd('.', ' ')}.{image}";
            return null;
        }

        failure = "";
        return new NativeModule(handle, full);
    }

    /// <summary>Asks the application's folder and the system's loader for <see cref="DefaultFileName"/>.</summary>
    /// <param name="failure">How the attempt ended where null is returned.</param>
    public static NativeModule? FromSystem(out string failure)
    {
        if (SystemLoader.TryLoad(DefaultFileName, out nint handle, out string text))
        {
            failure = "";
            return new NativeModule(handle, DefaultFileName);
        }

        failure = $"The system's loader has no {DefaultFileName} for this {RuntimeInformation.ProcessArchitecture} process: {text.TrimEnd('.', ' ')}.";
        return null;
    }

    /// <summary>The address of an exported function, or zero.</summary>
    public nint Export(string name) => SystemLoader.Export(_handle, name);
}

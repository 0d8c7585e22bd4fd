#if NET
using System;
using System.Runtime.InteropServices;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>The system's loader of shared libraries.</summary>
internal static class SystemLoader
{
    /// <summary>Loads by path, or by name from the application's folder and the system's places.</summary>
    public static bool TryLoad(string pathOrName, out nint handle, out string failure)
    {
        try
        {
            handle = NativeLibrary.Load(pathOrName, typeof(SystemLoader).Assembly, null);
            failure = "";
            return true;
        }
        catch (Exception error) when (error is DllNotFoundException or BadImageFormatException)
        {
            handle = 0;
            failure = error.Message.Replace(Environment.NewLine, " ");
            return false;
        }
    }

    public static nint Export(nint handle, string name) => NativeLibrary.TryGetExport(handle, name, out nint address) ? address : 0;
}
#else
using System;
using System.ComponentModel;
using System.IO;
using System.Runtime.InteropServices;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>The system's loader of shared libraries, for runtimes without one of their own.</summary>
internal static class SystemLoader
{
    private const int BindNow = 2;

    /// <summary>Loads by path, or by name from the application's folder and the system's places.</summary>
    public static bool TryLoad(string pathOrName, out nint handle, out string failure)
    {
        if (!Path.IsPathRooted(pathOrName))
        {
            string beside = Path.Combine(AppContext.BaseDirectory, pathOrName);
            if (File.Exists(beside) && Load(beside, out handle, out failure))
            {
                return true;
            }
        }

        return Load(pathOrName, out handle, out failure);
    }

    public static nint Export(nint handle, string name) =>
        RuntimeInformation.IsOSPlatform(OSPlatform.Windows) ? GetProcAddress(handle, name)
        : RuntimeInformation.IsOSPlatform(OSPlatform.OSX) ? MacSymbol(handle, name)
        : LinuxSymbol(handle, name);

    private static bool Load(string pathOrName, out nint handle, out string failure)
    {
        if (RuntimeInformation.IsOSPlatform(OSPlatform.Windows))
        {
            handle = LoadLibrary(pathOrName);
            failure = handle == 0 ? new Win32Exception(Marshal.GetLastWin32Error()).Message : "";
        }
        else if (RuntimeInformation.IsOSPlatform(OSPlatform.OSX))
        {
            handle = MacOpen(pathOrName, BindNow);
            failure = handle == 0 ? Text(MacError()) : "";
        }
        else
        {
            handle = LinuxOpen(pathOrName, BindNow);
            failure = handle == 0 ? Text(LinuxError()) : "";
        }

        return handle != 0;
    }

    private static string Text(nint message) => message == 0 ? "the loader gave no reason" : Marshal.PtrToStringAnsi(message) ?? "";

    [DllImport("kernel32", EntryPoint = "LoadLibraryW", CharSet = CharSet.Unicode, SetLastError = true)]
    private static extern nint LoadLibrary(string path);

    [DllImport("kernel32", EntryPoint = "GetProcAddress", CharSet = CharSet.Ansi, ExactSpelling = true, BestFitMapping = false)]
    private static extern nint GetProcAddress(nint module, string name);

    [DllImport("libSystem.dylib", EntryPoint = "dlopen", CharSet = CharSet.Ansi, BestFitMapping = false)]
    private static extern nint MacOpen(string path, int mode);

    [DllImport("libSystem.dylib", EntryPoint = "dlsym", CharSet = CharSet.Ansi, BestFitMapping = false)]
    private static extern nint MacSymbol(nint module, string name);

    [DllImport("libSystem.dylib", EntryPoint = "dlerror")]
    private static extern nint MacError();

    [DllImport("libdl.so.2", EntryPoint = "dlopen", CharSet = CharSet.Ansi, BestFitMapping = false)]
    private static extern nint LinuxOpen(string path, int mode);

    [DllImport("libdl.so.2", EntryPoint = "dlsym", CharSet = CharSet.Ansi, BestFitMapping = false)]
    private static extern nint LinuxSymbol(nint module, string name);

    [DllImport("libdl.so.2", EntryPoint = "dlerror")]
    private static extern nint LinuxError();
}
#endif

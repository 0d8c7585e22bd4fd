using System.Runtime.InteropServices;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>Version of the interface and of the library.</summary>
internal static unsafe class Versions
{
    private const int Interface = 1;

    private static readonly nint Library = Marshal.StringToCoTaskMemUTF8(typeof(Fluid).Assembly.GetName().Version!.ToString(3));

    [UnmanagedCallersOnly(EntryPoint = "rr_interface_version")]
    public static int InterfaceVersion() => Interface;

    [UnmanagedCallersOnly(EntryPoint = "rr_version")]
    public static byte* LibraryVersion() => (byte*)Library;
}

using System;
using System.IO;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>Reads from a file's header which system and processor a shared library was built for.</summary>
/// <remarks>ELF: e_machine (System V ABI). PE: Machine (Microsoft PE format). Mach-O: cputype (Apple mach-o/loader.h).</remarks>
internal static class ModuleImage
{
    private const int HeaderLength = 4096;
    private const int PortableHeaderOffset = 0x3c;

    /// <summary>Such as "built for Linux/Unix (ELF), processor x64"; null where the file cannot be read or is of no known format.</summary>
    public static string? Describe(string path)
    {
        byte[] header = new byte[HeaderLength];
        int length;
        try
        {
            using FileStream stream = File.OpenRead(path);
            length = stream.Read(header, 0, header.Length);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return null;
        }

        return length < 64 ? null : Elf(header) ?? Portable(header) ?? Mach(header);
    }

    private static string? Elf(byte[] header)
    {
        if (header[0] != 0x7f || header[1] != (byte)'E' || header[2] != (byte)'L' || header[3] != (byte)'F')
        {
            return null;
        }

        string processor = BitConverter.ToUInt16(header, 18) switch
        {
            3 => "x86",
            40 => "Arm",
            62 => "x64",
            183 => "Arm64",
            ushort other => $"number {other}",
        };
        return $"built for Linux/Unix (ELF), processor {processor}";
    }

    private static string? Portable(byte[] header)
    {
        if (header[0] != (byte)'M' || header[1] != (byte)'Z')
        {
            return null;
        }

        int offset = BitConverter.ToInt32(header, PortableHeaderOffset);
        if (offset < 0 || offset > HeaderLength - 6)
        {
            return null;
        }

        string processor = BitConverter.ToUInt16(header, offset + 4) switch
        {
            0x014c => "x86",
            0x8664 => "x64",
            0xaa64 => "Arm64",
            ushort other => $"number {other}",
        };
        return $"built for Windows (PE), processor {processor}";
    }

    private static string? Mach(byte[] header)
    {
        const uint Mach64 = 0xfeedfacf;
        const uint Universal = 0xbebafeca;
        uint magic = BitConverter.ToUInt32(header, 0);
        if (magic == Universal)
        {
            return "built for macOS (universal Mach-O)";
        }

        if (magic != Mach64)
        {
            return null;
        }

        string processor = BitConverter.ToInt32(header, 4) switch
        {
            0x01000007 => "x64",
            0x0100000c => "Arm64",
            int other => $"number {other}",
        };
        return $"built for macOS (Mach-O), processor {processor}";
    }
}

using System;
using System.Text;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>Zero-terminated UTF-8 text, as C reads and writes it.</summary>
internal static unsafe class NativeText
{
    public static byte[] Encode(string text)
    {
        byte[] bytes = new byte[Encoding.UTF8.GetByteCount(text) + 1];
        Encoding.UTF8.GetBytes(text, 0, text.Length, bytes, 0);
        return bytes;
    }

    /// <summary>Reads up to the terminating zero, or to the end of the buffer where there is none.</summary>
    public static string Decode(byte* buffer, int capacity)
    {
        int length = new ReadOnlySpan<byte>(buffer, capacity).IndexOf((byte)0);
        return Encoding.UTF8.GetString(buffer, length < 0 ? capacity : length);
    }
}

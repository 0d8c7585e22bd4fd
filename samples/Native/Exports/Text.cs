using System;
using System.Collections.Generic;
using System.Linq;
using System.Runtime.InteropServices;
using System.Text;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>UTF-8 across the border.</summary>
internal static unsafe class Text
{
    /// <summary>Writes what fits, ended with a zero and never cut inside a character; returns the bytes that all of it needs, zero included.</summary>
    public static int Write(string text, byte* buffer, int size)
    {
        if (buffer is not null && size > 0)
        {
            var target = new Span<byte>(buffer, size);
            Encoding.UTF8.GetEncoder().Convert(text, target[..^1], flush: true, out _, out int written, out _);
            target[written] = 0;
        }

        return Encoding.UTF8.GetByteCount(text) + 1;
    }

    /// <summary>Writes a first line and a line for each finding that asks for attention; returns how many of those there are.</summary>
    public static int WriteWithCautions(string first, IEnumerable<Finding> findings, byte* buffer, int size)
    {
        string[] cautions = [.. findings.Where(finding => finding.Severity >= Severity.Caution).Select(finding => finding.ToText(DisplayUnits.International))];
        Write(string.Join('\n', [first, .. cautions]), buffer, size);
        return cautions.Length;
    }

    /// <summary>Text that must not be null.</summary>
    public static string Read(byte* text, string name) =>
        Marshal.PtrToStringUTF8((nint)text) ?? throw new ArgumentNullException(name);
}

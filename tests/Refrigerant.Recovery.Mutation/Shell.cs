using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Text;

namespace Refrigerant.Recovery.Mutation;

/// <summary>Runs programs to their end.</summary>
internal static class Shell
{
    /// <summary>Exit code of a program that took too long and was ended.</summary>
    public const int TooLong = 124;

    public static (int Exit, string Output) Run(
        string program, IEnumerable<string> arguments, IReadOnlyDictionary<string, string>? environment = null, TimeSpan? limit = null)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach ((string name, string value) in environment ?? new Dictionary<string, string>())
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        var text = new StringBuilder();
        process.OutputDataReceived += (_, e) => Append(e.Data);
        process.ErrorDataReceived += (_, e) => Append(e.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        if (!process.WaitForExit(limit is TimeSpan time ? (int)time.TotalMilliseconds : -1))
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
            return (TooLong, text.ToString());
        }

        process.WaitForExit();
        return (process.ExitCode, text.ToString());

        void Append(string? line)
        {
            lock (text)
            {
                text.Append(line).Append('\n');
            }
        }
    }
}

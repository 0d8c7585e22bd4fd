using System;
using System.Diagnostics;
using System.Threading.Tasks;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests;

/// <summary>A program that is run as a user would run it.</summary>
internal static class Command
{
    private static readonly TimeSpan Limit = TimeSpan.FromMinutes(5);

    /// <summary>What it prints; it must end well, and in time.</summary>
    public static async Task<string[]> Run(string folder, string program, params string[] arguments)
    {
        using Process process = new()
        {
            StartInfo = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true },
        };
        process.Start();
        Task<string> printed = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        bool ended = process.WaitForExit(Limit);
        if (!ended)
        {
            process.Kill(entireProcessTree: true);
        }

        string text = await printed;
        Assert.True(ended && process.ExitCode == 0, $"{program}: {(ended ? "failed" : "took too long")}\n{text}\n{await errors}");
        return text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}

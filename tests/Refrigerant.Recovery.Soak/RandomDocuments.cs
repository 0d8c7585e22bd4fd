using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;

namespace Refrigerant.Recovery.Soak;

/// <summary>Noise and mutated job documents: each is a job, which is written and read again, or throws <see cref="DocumentException"/>.</summary>
internal static class RandomDocuments
{
    private const int Batch = 200;

    private static readonly string[] Tokens =
    [
        "{", "}", "[", "]", ",", ":", "\"", "\\u", "\\ud800", "null", "true", "-", "0", "1e999", "1e-320", "-0.0", "1E308", "\"NaN\"", "\u0000", "\ud83d",
        "\"fittings\"", "\"oil\"", "\"water\"", "\"blend\": {\"components\": [{\"refrigerant\": \"R-32\", \"massFraction\": 1}]}", "\"evacuation\": {}", "[[[[", "{\"a\":",
    ];

    public static int Run(long count)
    {
        long done = 0;
        long read = 0;
        var failures = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var watch = Stopwatch.StartNew();
        Parallel.For(0, (count + Batch - 1) / Batch, batch =>
        {
            var random = new Random((int)(batch * 7919 % int.MaxValue));
            string document = RecoveryJobJson.Write(RandomJobs.Next(random));
            for (int i = 0; i < Batch; i++)
            {
                string text = random.Next(10) == 0 ? Noise(random) : Mutated(document, random);
                try
                {
                    RecoveryJob job = RecoveryJobJson.Read(text);
                    Interlocked.Increment(ref read);
                    string written = RecoveryJobJson.Write(job);
                    if (RecoveryJobJson.Write(RecoveryJobJson.Read(written)) != written)
                    {
                        failures.AddOrUpdate("written twice, it differs: " + text, 1, (_, n) => n + 1);
                    }
                }
                catch (DocumentException)
                {
                    // The documented answer to what is no job.
                }
#pragma warning disable CA1031 // Every other exception is what this run looks for.
                catch (Exception e)
#pragma warning restore CA1031
                {
                    failures.AddOrUpdate($"{e.GetType().Name}: {e.Message} {e.StackTrace?.Split('\n')[0]}", 1, (_, n) => n + 1);
                }
            }

            Interlocked.Add(ref done, Batch);
        });
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{done:N0} documents in {watch.Elapsed.TotalSeconds:F0} s, {read:N0} of them jobs, the others DocumentException; {failures.Values.Sum()} failures"));
        foreach (KeyValuePair<string, int> failure in failures.OrderByDescending(f => f.Value).Take(20))
        {
            Console.WriteLine($"  {failure.Value} x {failure.Key}");
        }

        return failures.IsEmpty ? 0 : 1;
    }

    private static string Noise(Random random)
    {
        var text = new StringBuilder();
        for (int i = random.Next(30); i > 0; i--)
        {
            text.Append(Tokens[random.Next(Tokens.Length)]);
        }

        return text.ToString();
    }

    private static string Mutated(string document, Random random)
    {
        var text = new StringBuilder(document);
        for (int i = 1 + random.Next(3); i > 0; i--)
        {
            int at = random.Next(text.Length);
            switch (random.Next(5))
            {
                case 0:
                    text.Remove(at, Math.Min(1 + random.Next(30), text.Length - at));
                    break;
                case 1:
                    text.Insert(at, Tokens[random.Next(Tokens.Length)]);
                    break;
                case 2:
                    text[at] = (char)random.Next(0x20, 0x7f);
                    break;
                case 3:
                    ReplaceNumber(text, at, random);
                    break;
                default:
                    text.Insert(at, document.AsSpan(random.Next(document.Length / 2), random.Next(document.Length / 2)));
                    break;
            }
        }

        return text.ToString();
    }

    /// <summary>The number that stands at or after a place becomes another one, so that documents stay well formed and ranges are met.</summary>
    private static void ReplaceNumber(StringBuilder text, int at, Random random)
    {
        int start = at;
        while (start < text.Length && !char.IsAsciiDigit(text[start]))
        {
            start++;
        }

        int end = start;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '.' or 'E' or '-'))
        {
            end++;
        }

        text.Remove(start, end - start);
        double number = random.Next(3) == 0 ? random.Next(-2, 3) : (random.Next(8) == 0 ? -1 : 1) * Math.Pow(10, (random.NextDouble() * 40) - 20);
        text.Insert(start, number.ToString("R", CultureInfo.InvariantCulture));
    }
}

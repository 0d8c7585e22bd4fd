using System;
using System.Globalization;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Soak;

/// <summary>Random and mutated texts as designations: each finds a fluid or throws <see cref="UnknownFluidException"/>.</summary>
internal static class RandomNames
{
    private const string Alphabet = "Rr-0123456789 abcABCzyfZYFE()_./\\\u00e9\u4e2d\u0000\ud83d";

    public static int Run(long count)
    {
        var random = new Random(20);
        long found = 0;
        for (long i = 0; i < count; i++)
        {
            string text = random.Next(2) == 0 ? Noise(random) : Mutated(random);
            try
            {
                Fluid fluid = Fluid.Get(text);
                found++;
                if (!Fluid.TryGet(text, out Fluid? again) || !ReferenceEquals(fluid, again))
                {
                    Console.WriteLine($"Get and TryGet disagree on \"{text}\"");
                    return 1;
                }
            }
            catch (UnknownFluidException)
            {
                if (Fluid.TryGet(text, out _))
                {
                    Console.WriteLine($"TryGet finds \"{text}\" and Get does not");
                    return 1;
                }
            }
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count:N0} designations, {found:N0} of them found, no other outcome than a fluid or UnknownFluidException"));
        return 0;
    }

    private static string Noise(Random random) =>
        string.Create(random.Next(40), random, (span, r) =>
        {
            for (int i = 0; i < span.Length; i++)
            {
                span[i] = Alphabet[r.Next(Alphabet.Length)];
            }
        });

    private static string Mutated(Random random)
    {
        string name = Fluid.All[random.Next(Fluid.All.Count)].Designation;
        int at = random.Next(name.Length);
        return random.Next(4) switch
        {
            0 => name.Remove(at, 1),
            1 => name.Insert(at, Alphabet[random.Next(Alphabet.Length)].ToString()),
            2 => name.ToLowerInvariant().Replace("-", " ", StringComparison.Ordinal),
            _ => name,
        };
    }
}

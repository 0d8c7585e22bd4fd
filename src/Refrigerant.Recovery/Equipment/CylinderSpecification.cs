using System;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>What a cylinder is built to: a DOT or TC specification with its service pressure, or a UN/ADR test pressure. Immutable.</summary>
public sealed record CylinderSpecification
{
    /// <summary>The prefix of marks that this type knows, longest first so that "4BA" is not read as "4B" (49 CFR 178, the list from memory).</summary>
    private static readonly string[] KnownTypes =
        ["3AAX", "3AA", "3AL", "3AX", "3A", "3B", "3E", "3T", "4AA", "4BA", "4BW", "4DA", "4DS", "4B", "4D", "4E", "4L", Disposable];

    private const string Disposable = "39";

    /// <summary>Who a mark is of; what the Interstate Commerce Commission marked, the DOT took over.</summary>
    private static readonly string[] Prefixes = ["DOT", "ICC", "CTC", "TC"];

    private CylinderSpecification(string mark, string type, double? servicePressure, Pressure? testPressure)
    {
        Mark = mark;
        Type = type;
        ServicePressurePascals = servicePressure;
        TestPressure = testPressure;
    }

    /// <summary>The mark in its usual form, such as "DOT-4BA400", "TC-4BAM28" or "UN 42 bar".</summary>
    public string Mark { get; }

    /// <summary>The specification without its pressure, such as "4BA", of a TC mark that of the DOT specification it corresponds to (49 CFR 173.301(l), from memory); "UN" for a UN/ADR cylinder.</summary>
    public string Type { get; }

    /// <summary>Whether the mark is a UN/ADR test pressure and not a DOT specification.</summary>
    public bool IsUn => Type == "UN";

    /// <summary>Whether the cylinder is a non-refillable one (DOT 39).</summary>
    public bool IsNonRefillable => Type == Disposable;

    /// <summary>Marked service pressure, gauge; null for a UN/ADR cylinder (49 CFR 173.115).</summary>
    public Pressure? ServicePressure =>
        ServicePressurePascals is double pascals ? new Pressure(pascals, PressureUnit.Pascal) : null;

    /// <summary>
    /// Test pressure, gauge: marked on a UN/ADR cylinder; for DOT 4-series and 3B twice the service pressure, for DOT 3A, 3AA, 3AL, 3AX,
    /// 3AAX, 3E and 3T five thirds of it (49 CFR 180.209, from memory); null where neither is known.
    /// </summary>
    public Pressure? TestPressure { get; }

    internal double? ServicePressurePascals { get; }

    internal double? TestPressurePascals => TestPressure?.Pascals;

    /// <summary>
    /// Reads a mark: the specification and its service pressure, of a DOT mark in psi, such as "DOT 4BA400", "4BW-260" or "3AA2400"; of a Canadian one with an M after the
    /// specification in bar, such as "TC-4BAM28" (CSA B339, from memory).
    /// </summary>
    /// <param name="mark">The mark; case, blanks, hyphens and a leading "DOT" or "ICC" do not matter.</param>
    /// <exception cref="ArgumentNullException">The mark is null.</exception>
    /// <exception cref="ArgumentException">No known specification, or no service pressure from 1 to 10 000 psi (1 to 700 bar) after it.</exception>
    public static CylinderSpecification FromMark(string mark)
    {
        Require.NotNull(mark, nameof(mark));
        string text = new([.. mark.ToUpperInvariant().Where(char.IsLetterOrDigit)]);
        string? body = Prefixes.FirstOrDefault(prefix => text.StartsWith(prefix, StringComparison.Ordinal));
        text = text.Substring(body?.Length ?? 0);
        string? type = KnownTypes.FirstOrDefault(known => text.StartsWith(known, StringComparison.Ordinal))
            ?? throw Unknown(mark, "it names no known specification");
        string digits = text.Substring(type.Length);
        bool isMetric = digits.StartsWith("M", StringComparison.Ordinal) && body is null or "TC" or "CTC";
        digits = digits.Substring(isMetric ? 1 : 0);

        // A disposable one carries NRC and its test pressure besides: DOT-39 NRC 260/325.
        if (type == Disposable && mark.IndexOf(Disposable, StringComparison.Ordinal) is >= 0 and int at)
        {
            digits = new([.. mark.Substring(at + Disposable.Length).SkipWhile(c => c is not (>= '0' and <= '9')).TakeWhile(c => c is >= '0' and <= '9')]);
            text = Disposable + digits;
        }

        // Insulated and electric-welded variants carry letters after the pressure: 4B240ET.
        if (digits.EndsWith("ET", StringComparison.Ordinal))
        {
            digits = digits.Substring(0, digits.Length - 2);
        }

        int most = isMetric ? 700 : 10_000;
        if (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int marked) || marked < 1 || marked > most)
        {
            throw Unknown(mark, isMetric ? "a service pressure from 1 to 700 bar must follow the M"
                : type == Disposable ? "a disposable cylinder, which nothing is to be filled into; a service pressure from 1 to 10000 psi must follow the specification"
                : "a service pressure from 1 to 10000 psi must follow the specification");
        }

        double service = new Pressure(marked, isMetric ? PressureUnit.Bar : PressureUnit.PoundForcePerSquareInch).Pascals;
        Pressure? test = TestRatio(type) is double ratio ? new Pressure(ratio * service, PressureUnit.Pascal) : null;
        string issuer = isMetric || body == "TC" ? "TC-" : body == "CTC" ? "CTC-" : "DOT-";
        return new CylinderSpecification(issuer + text, type, service, test);
    }

    /// <summary>A UN/ADR cylinder by its marked test pressure.</summary>
    /// <param name="testPressure">Test pressure, gauge, greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public static CylinderSpecification FromTestPressure(Pressure testPressure)
    {
        double pascals = Require.Positive(testPressure.Pascals, "Pa", nameof(testPressure));
        return new CylinderSpecification($"UN {Require.Text(pascals / 1e5)} bar", "UN", null, Held.Kilopascals(testPressure));
    }

    /// <summary>The mark.</summary>
    public override string ToString() => Mark;

    private static double? TestRatio(string type) => type switch
    {
        "3A" or "3AA" or "3AL" or "3AX" or "3AAX" or "3E" or "3T" => 5.0 / 3,
        "3B" or "4AA" or "4B" or "4BA" or "4BW" or "4D" or "4DA" or "4DS" or "4E" => 2,
        _ => null,
    };

    private static ArgumentException Unknown(string mark, string why) => new(
        $"\"{mark}\" is no cylinder mark: {why}. Known specifications: DOT {string.Join(", ", KnownTypes)}, "
        + "each followed by its service pressure in psi, such as 4BA400, or by M and bar, such as TC-4BAM28.",
        nameof(mark));
}

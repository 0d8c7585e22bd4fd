using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Refrigerant.Recovery.Numerics;

/// <summary>Argument checks. Each message names the parameter, the value and the valid range with its unit.</summary>
internal static partial class Require
{
    /// <summary>The value, if it is null or one of its enumeration.</summary>
    public static T? Defined<T>(T? value, string parameter)
        where T : struct, Enum => value is T given ? Defined(given, parameter) : null;

    /// <summary>The value, if it is one of its enumeration.</summary>
    public static T Defined<T>(T value, string parameter)
        where T : struct, Enum => Enum.IsDefined(typeof(T), value)
        ? value
        : throw new ArgumentOutOfRangeException(parameter, value, $"{parameter} is {value}; it must be one of {string.Join(", ", Enum.GetNames(typeof(T)))}.");

    public static double Finite(double value, string unit, string parameter)
    {
        if (!IsFinite(value))
        {
            ThrowNotFinite(value, unit, parameter);
        }

        return value;
    }

    public static double Positive(double value, string unit, string parameter)
    {
        if (!(value > 0) || !IsFinite(value))
        {
            ThrowRange(value, Finite("greater than 0", value), unit, parameter);
        }

        return value;
    }

    public static double NotNegative(double value, string unit, string parameter)
    {
        if (!(value >= 0) || !IsFinite(value))
        {
            ThrowRange(value, Finite("0 or more", value), unit, parameter);
        }

        return value;
    }

    /// <summary>The value must lie in the closed range from <paramref name="minimum"/> to <paramref name="maximum"/>.</summary>
    public static double InRange(double value, double minimum, double maximum, string unit, string parameter)
    {
        if (!(value >= minimum && value <= maximum))
        {
            ThrowRange(value, $"from {Text(minimum)} to {Text(maximum)}", unit, parameter);
        }

        return value;
    }

    public static T NotNull<T>([NotNull] T? value, string parameter)
        where T : class => value ?? throw new ArgumentNullException(parameter);

    /// <summary>A text that is neither null nor blank.</summary>
    public static string NotEmpty([NotNull] string? value, string parameter)
    {
        if (NotNull(value, parameter).Trim().Length == 0)
        {
            throw new ArgumentException($"{parameter} is \"{value}\"; it must be a text that is not blank.", parameter);
        }

        return value;
    }

    /// <summary>A day that was given, not the default of its type.</summary>
    public static DateTime Given(DateTime value, string parameter) =>
        value != default ? value : throw new ArgumentException($"{parameter} is 0001-01-01, which is what a day that was not given is; it must be given.", parameter);

    /// <summary>A read-only copy of a list, equal to another of the same members; neither it nor a member may be null.</summary>
    public static IReadOnlyList<T> Copy<T>([NotNull] IReadOnlyList<T>? values, string parameter)
        where T : class
    {
        var copy = new T[NotNull(values, parameter).Count];
        for (int i = 0; i < copy.Length; i++)
        {
            copy[i] = values[i] ?? throw new ArgumentNullException(parameter, FormattableString.Invariant($"{parameter}[{i}] is null."));
        }

        return new ValueList<T>(copy);
    }

    public static bool IsFinite(double value) => !double.IsNaN(value) && !double.IsInfinity(value);

    /// <summary>A number as messages print it: up to seven significant digits, without exponent from 1e-5 to 1e15; invariant culture.</summary>
    public static string Text(double value)
    {
        double magnitude = Math.Abs(value);
        string text = value.ToString("G7", CultureInfo.InvariantCulture);
        return magnitude == 0 ? "0"
            : magnitude is >= 1e-5 and < 1e15 && text.IndexOf('E') >= 0
                ? decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture)
                : text;
    }

    /// <summary>A range that infinity would lie in says that it may not.</summary>
    private static string Finite(string range, double value) => IsFinite(value) ? range : "finite and " + range;

    [DoesNotReturn]
    private static void ThrowNotFinite(double value, string unit, string parameter) =>
        throw new ArgumentOutOfRangeException(parameter, unit.Length == 0
            ? $"{parameter} is {Text(value)}; it must be a finite number."
            : $"{parameter} is {Text(value)} {unit}; it must be a finite number of {unit}.");

    [DoesNotReturn]
    private static void ThrowRange(double value, string range, string unit, string parameter) =>
        throw new ArgumentOutOfRangeException(
            parameter,
            unit.Length == 0
                ? $"{parameter} is {Text(value)}; it must be {range}."
                : $"{parameter} is {Text(value)} {unit}; it must be {range} {unit}.");
}

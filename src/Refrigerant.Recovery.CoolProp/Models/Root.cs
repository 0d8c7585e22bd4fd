using System;
using MathNet.Numerics.RootFinding;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.CoolProp.Models;

/// <summary>Roots of monotone functions by Brent's method.</summary>
internal static class Root
{
    private const int MaximumIterations = 100;

    /// <summary>Finds the root between two ends at which the function has opposite signs.</summary>
    /// <exception cref="ConvergenceException">The bound of iterations was reached.</exception>
    public static double Find(Func<double, double> function, double low, double high, double accuracy, Func<string> question) =>
        Brent.TryFindRoot(function, low, high, accuracy, MaximumIterations, out double root)
            ? root
            : throw new ConvergenceException(
                FormattableString.Invariant($"{question()}: no solution to within {accuracy:G3} after {MaximumIterations} steps."), MaximumIterations);
}

using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>Root of a continuous rising function in a bracket, from a guess and a slope that the last solution left: a bracketed secant.</summary>
internal struct WarmRoot
{
    private const int SecantSteps = 14;

    /// <summary>A secant step this small, relative to x, is the last one: the next would be smaller by orders of magnitude.</summary>
    private const double LastStep = 1e-10;

    /// <summary>The same for a step with the slope of an earlier solution.</summary>
    private const double LastOldStep = 1e-10;

    /// <summary>On one side of the root values become smaller by at least this.</summary>
    private const double Progress = 0.5;

    /// <summary>A value that a change of x by this share would make is rounding: its sign says nothing.</summary>
    private const double Rounding = 2e-15;

    /// <summary>Accuracy of the root where the secant does not get there, relative to the upper end of the bracket.</summary>
    private const double Tolerance = 1e-14;

    private double _guess;
    private double _slope;

    /// <param name="guess">First guess.</param>
    /// <param name="slope">Guess of the slope there, greater than zero.</param>
    public WarmRoot(double guess, double slope)
    {
        _guess = guess;
        _slope = slope;
    }

    /// <summary>The root between <paramref name="low"/>, where the function is negative, and <paramref name="high"/>, where it is positive.</summary>
    /// <exception cref="ConvergenceException">The function is not a number, or no root was found.</exception>
    public double Find<TFunction>(ref TFunction function, double low, double high)
        where TFunction : struct, IScalarFunction
    {
        double lower = low;
        double upper = high;
        double x = _guess > low && _guess < high ? _guess : 0.5 * (low + high);
        double previousX = x;
        double previousValue = 0;
        double lastBelow = double.NegativeInfinity;
        double lastAbove = double.PositiveInfinity;
        for (int i = 0; i < SecantSteps; i++)
        {
            double value = function.Value(x);
            bool progresses;
            if (value > 0)
            {
                upper = x;
                progresses = value < Progress * lastAbove;
                lastAbove = value;
            }
            else if (value < 0)
            {
                lower = x;
                progresses = value > Progress * lastBelow;
                lastBelow = value;
            }
            else if (value == 0)
            {
                _guess = x;
                return x;
            }
            else
            {
                throw new ConvergenceException($"The balance is no number at {Require.Text(x)}.", i);
            }

            double slope = i == 0 ? _slope : (value - previousValue) / (x - previousX);
            if (Math.Abs(value) <= Rounding * slope * x)
            {
                _guess = x;
                return x;
            }

            // A secant across a kink points next to the end of the bracket that it came from and gets nowhere.
            double next = x - (value / slope);
            bool acrossKink = !progresses && (value > 0) != (previousValue > 0);
            if (!(next > lower && next < upper) || acrossKink)
            {
                next = 0.5 * (lower + upper);
            }
            else if (Math.Abs(next - x) <= (i == 0 ? LastOldStep : LastStep) * x)
            {
                _slope = slope;
                _guess = next;
                return next;
            }

            previousX = x;
            previousValue = value;
            x = next;
        }

        _guess = BracketedRoot.Find(ref function, lower, upper, Tolerance * upper);
        return _guess;
    }
}

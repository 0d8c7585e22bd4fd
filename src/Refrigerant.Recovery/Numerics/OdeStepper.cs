using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>A one-step method: the step, what it estimates its error to be, and the course in between.</summary>
/// <remarks>Its buffers serve one integration at a time.</remarks>
internal abstract class OdeStepper
{
    protected OdeStepper(OdeSystem system)
    {
        System = system;
        Dimension = system.Dimension;
        Controlled = system.ControlledDimension;
    }

    /// <summary>One over one more than the order of the error estimate: how the next step follows from the error.</summary>
    public abstract double ErrorExponent { get; }

    /// <summary>Evaluations of f so far, failed ones included.</summary>
    public int Evaluations { get; protected set; }

    protected OdeSystem System { get; }

    protected int Dimension { get; }

    protected int Controlled { get; }

    /// <summary>
    /// One step of length <paramref name="h"/> from <paramref name="state"/>, whose slope is <paramref name="slope"/>, into
    /// <paramref name="next"/> and its slope, which is the latest evaluation. False where it met no state of the system.
    /// </summary>
    public abstract bool Step(double[] state, double[] slope, double h, double[] next, double[] nextSlope);

    /// <summary>Estimated local error of component <paramref name="index"/> in the step just made.</summary>
    public abstract double Error(int index);

    /// <summary>Prepares the continuous extension of the step just made.</summary>
    public abstract void PrepareInterpolation(double[] state, double[] slope, double[] next, double[] nextSlope);

    /// <summary>The continuous extension at a share of the step.</summary>
    public abstract void Interpolate(double[] state, double share, double[] result);

    /// <summary>Called where f may be another one than before: after an event, and at the start.</summary>
    public virtual void SystemChanged()
    {
    }

    /// <summary>Writes f(y) and counts it.</summary>
    public bool Evaluate(double[] state, double[] slope)
    {
        Evaluations++;
        return System.Derivatives(state, slope);
    }

    /// <summary>Largest estimated local error of the controlled components over the error allowed; not a number where one of them is none.</summary>
    public double ErrorNorm(double[] state, double[] next, double tolerance)
    {
        double largest = 0;
        for (int i = 0; i < Controlled; i++)
        {
            largest = Math.Max(largest, Math.Abs(Error(i)) / (tolerance * Math.Max(System.Size(i, state), System.Size(i, next))));
        }

        return largest;
    }
}

using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>
/// A system y' = f(y) with events, as <see cref="OdeIntegrator"/> integrates it. One instance serves one integration at a time;
/// its methods write into the arrays they are given and allocate nothing.
/// </summary>
internal abstract class OdeSystem
{
    /// <summary>Number of components of y.</summary>
    public abstract int Dimension { get; }

    /// <summary>Number of leading components that the error control watches and on which f depends; the others are plain accumulators.</summary>
    public virtual int ControlledDimension => Dimension;

    /// <summary>Number of event functions.</summary>
    public virtual int EventCount => 0;

    /// <summary>Writes f(y). Returns false where y is no state of the system; the integrator then tries a shorter step.</summary>
    public abstract bool Derivatives(double[] state, double[] derivatives);

    /// <summary>The size of component <paramref name="index"/> below which its error does not matter; infinite where f does not depend on it.</summary>
    public abstract double AbsoluteScale(int index);

    /// <summary>The size of component <paramref name="index"/> against which its error is judged.</summary>
    public virtual double Size(int index, double[] state) => AbsoluteScale(index) + Math.Abs(state[index]);

    /// <summary>
    /// Writes the event functions. An event happens where its function falls from above zero to zero or below.
    /// Returns false where y is no state of the system.
    /// </summary>
    public virtual bool Events(double[] state, double[] values) => true;

    /// <summary>Decides what an event does. Each event happens at most once in an integration.</summary>
    public virtual EventAction OnEvent(int index, double time, double[] state) => EventAction.Stop;

    /// <summary>Called at the start, after every accepted step and after every event, when f(y) is the latest evaluation.</summary>
    public virtual void OnStep(double time, double[] state)
    {
    }
}

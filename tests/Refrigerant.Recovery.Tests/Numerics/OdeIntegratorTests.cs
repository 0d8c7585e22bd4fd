using System;
using Refrigerant.Recovery.Numerics;
using Xunit;

namespace Refrigerant.Recovery.Tests.Numerics;

public class OdeIntegratorTests
{
    [Fact]
    public void A_harmonic_oscillator_comes_back_after_ten_periods()
    {
        var system = new Oscillator();
        double[] y = [1, 0];
        OdeOutcome outcome = new OdeIntegrator(system).Integrate(y, 0, 20 * Math.PI, new OdeOptions(1e-10, 10, 10_000));
        Assert.Equal(OdeStopReason.EndTime, outcome.Reason);
        Assert.Equal(20 * Math.PI, outcome.Time);
        Assert.Equal(1, y[0], 1e-8);
        Assert.Equal(0, y[1], 1e-8);
        Assert.InRange(outcome.Steps, 100, 2000);
    }

    [Fact]
    public void A_tenfold_smaller_tolerance_gives_a_smaller_error()
    {
        double Error(double tolerance)
        {
            double[] y = [1, 0];
            new OdeIntegrator(new Oscillator()).Integrate(y, 0, 10, new OdeOptions(tolerance, 10, 100_000));
            return Math.Abs(y[0] - Math.Cos(10));
        }

        double coarse = Error(1e-5);
        double fine = Error(1e-9);
        Assert.True(coarse < 1e-3, $"coarse {coarse}");
        Assert.True(fine < 1e-7 && fine < coarse / 100, $"fine {fine}");
    }

    [Fact]
    public void An_event_is_located_where_it_happens_and_ends_the_run()
    {
        double[] y = [1, 0];
        OdeOutcome outcome = new OdeIntegrator(new Oscillator { Level = 0.25 }).Integrate(y, 0, 50, new OdeOptions(1e-10, 10, 10_000));
        Assert.Equal(OdeStopReason.Event, outcome.Reason);
        Assert.Equal(0, outcome.EventIndex);
        Assert.Equal(Math.Acos(0.25), outcome.Time, 1e-7);
        Assert.Equal(0.25, y[0], 1e-8);
    }

    [Fact]
    public void A_kink_at_an_event_costs_no_accuracy()
    {
        // y' = −1 down to y = 0.5, then y' = −y: y(2) = 0.5·exp(−1.5).
        double[] y = [1];
        OdeOutcome outcome = new OdeIntegrator(new Kink()).Integrate(y, 0, 2, new OdeOptions(1e-11, 10, 1000));
        Assert.Equal(OdeStopReason.EndTime, outcome.Reason);
        Assert.Equal(0.5 * Math.Exp(-1.5), y[0], 1e-10);
    }

    [Fact]
    public void A_linear_invariant_is_kept_to_rounding()
    {
        double[] y = [3, 0, 1e3, 0];
        new OdeIntegrator(new Exchange()).Integrate(y, 0, 100, new OdeOptions(1e-4, 10, 10_000));
        Assert.Equal(1003, y[0] + y[1] + y[2], 1e-9);
        Assert.True(y[1] > 2.9);
    }

    [Fact]
    public void A_system_that_runs_out_of_valid_states_stops_at_its_edge_and_says_so()
    {
        double[] y = [1];
        OdeOutcome outcome = new OdeIntegrator(new Edge()).Integrate(y, 0, 10, new OdeOptions(1e-6, 1, 10_000));
        Assert.Equal(OdeStopReason.InvalidState, outcome.Reason);
        Assert.Equal(0.75, outcome.Time, 1e-4);
    }

    [Fact]
    public void The_number_of_steps_is_bounded()
    {
        double[] y = [1, 0];
        OdeOutcome outcome = new OdeIntegrator(new Oscillator()).Integrate(y, 0, 1e9, new OdeOptions(1e-10, 1e9, 500));
        Assert.Equal(OdeStopReason.StepLimit, outcome.Reason);
        Assert.Equal(500, outcome.Steps + outcome.RejectedSteps);
    }

    [Fact]
    public void Two_runs_are_the_same_to_the_last_bit()
    {
        double[] first = [1, 0];
        double[] second = [1, 0];
        var solver = new OdeIntegrator(new Oscillator());
        solver.Integrate(first, 0, 7, new OdeOptions(1e-7, 1, 1000));
        solver.Integrate(second, 0, 7, new OdeOptions(1e-7, 1, 1000));
        Assert.Equal(first, second);
    }

    private sealed class Oscillator : OdeSystem
    {
        public double Level { get; init; } = double.NegativeInfinity;

        public override int Dimension => 2;

        public override int EventCount => 1;

        public override double AbsoluteScale(int index) => 1;

        public override bool Derivatives(double[] state, double[] derivatives)
        {
            derivatives[0] = state[1];
            derivatives[1] = -state[0];
            return true;
        }

        public override bool Events(double[] state, double[] values)
        {
            values[0] = double.IsNegativeInfinity(Level) ? 1 : state[0] - Level;
            return true;
        }
    }

    private sealed class Kink : OdeSystem
    {
        private bool _second;

        public override int Dimension => 1;

        public override int EventCount => 1;

        public override double AbsoluteScale(int index) => 1;

        public override bool Derivatives(double[] state, double[] derivatives)
        {
            derivatives[0] = _second ? -state[0] : -1;
            return true;
        }

        public override bool Events(double[] state, double[] values)
        {
            values[0] = state[0] - 0.5;
            return true;
        }

        public override EventAction OnEvent(int index, double time, double[] state)
        {
            _second = true;
            return EventAction.Resume;
        }
    }

    private sealed class Exchange : OdeSystem
    {
        public override int Dimension => 4;

        public override double AbsoluteScale(int index) => 1;

        public override bool Derivatives(double[] state, double[] derivatives)
        {
            double flow = 0.1 * state[0] * (1 + Math.Sin(state[3]));
            derivatives[0] = -flow;
            derivatives[1] = 0.99 * flow;
            derivatives[2] = 0.01 * flow;
            derivatives[3] = 1;
            return true;
        }
    }

    private sealed class Edge : OdeSystem
    {
        public override int Dimension => 1;

        public override double AbsoluteScale(int index) => 1;

        public override bool Derivatives(double[] state, double[] derivatives)
        {
            derivatives[0] = -1;
            return state[0] >= 0.25;
        }
    }
}

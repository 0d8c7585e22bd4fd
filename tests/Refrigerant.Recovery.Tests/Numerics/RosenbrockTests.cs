using System;
using Refrigerant.Recovery.Numerics;
using Xunit;

namespace Refrigerant.Recovery.Tests.Numerics;

public class RosenbrockTests
{
    [Fact]
    public void The_error_falls_with_the_fourth_power_of_the_step()
    {
        // Logistic growth y' = y·(1 − y), y(0) = 0.1: y(t) = 1/(1 + 9·exp(−t)), closed form.
        static double Error(int steps)
        {
            double[] y = [0.1, 0];
            double h = 4.0 / steps;
            var stepper = new Rosenbrock(new Logistic());
            double[] slope = new double[2], next = new double[2], nextSlope = new double[2];
            Assert.True(stepper.Evaluate(y, slope));
            for (int i = 0; i < steps; i++)
            {
                Assert.True(stepper.Step(y, slope, h, next, nextSlope));
                (y, next) = (next, y);
                (slope, nextSlope) = (nextSlope, slope);
            }

            return Math.Abs(y[0] - Exact(4));
        }

        double order = Math.Log(Error(8) / Error(16), 2);
        Assert.InRange(order, 3.6, 4.6);
        Assert.True(Error(32) < 2e-6);
    }

    [Fact]
    public void The_course_within_a_step_is_of_order_three()
    {
        static double Error(double h)
        {
            double[] y = [0.1, 0];
            var stepper = new Rosenbrock(new Logistic());
            double[] slope = new double[2], next = new double[2], nextSlope = new double[2], between = new double[2];
            Assert.True(stepper.Evaluate(y, slope) && stepper.Step(y, slope, h, next, nextSlope));
            stepper.PrepareInterpolation(y, slope, next, nextSlope);
            double largest = 0;
            foreach (double share in new[] { 0.25, 0.5, 0.75 })
            {
                stepper.Interpolate(y, share, between);
                largest = Math.Max(largest, Math.Abs(between[0] - Exact(share * h)));
            }

            stepper.Interpolate(y, 1, between);
            Assert.Equal(next[0], between[0], 1e-15);
            return largest;
        }

        Assert.InRange(Math.Log(Error(0.8) / Error(0.4), 2), 3.5, 5.5);
    }

    [Fact]
    public void A_relaxation_a_million_times_faster_than_the_course_costs_few_steps()
    {
        // y' = −10⁶·(y − cos t) − sin t: y = cos t. Stability alone would ask of the explicit pair 3 million steps.
        double[] y = [1, 0, 0];
        OdeOutcome outcome = new OdeIntegrator(new Relaxation()).Integrate(y, 0, 10, new OdeOptions(1e-6, 1, 2000));
        Assert.Equal(OdeStopReason.EndTime, outcome.Reason);
        Assert.Equal(Math.Cos(10), y[0], 1e-4);
        Assert.Equal(Math.Sin(10), y[2], 1e-4);
        Assert.InRange(outcome.Steps, 20, 400);
    }

    [Fact]
    public void Stiff_exchange_keeps_its_sum_to_rounding()
    {
        // Robertson's reaction (1966).
        double[] y = [1, 0, 0];
        OdeOutcome outcome = new OdeIntegrator(new Robertson()).Integrate(y, 0, 40, new OdeOptions(1e-7, 40, 2000));
        Assert.Equal(OdeStopReason.EndTime, outcome.Reason);
        Assert.Equal(1, y[0] + y[1] + y[2], 1e-12);

        // Values at t = 40 as the literature prints them: Hairer and Wanner, Solving ODEs II, and many test sets (from memory).
        Assert.Equal(0.7158271, y[0], 2e-6);
        Assert.Equal(9.185535e-6, y[1], 1e-10);
    }

    [Fact]
    public void A_flow_by_the_root_of_a_tiny_difference_costs_few_steps()
    {
        // Two tanks near 10⁶: what one gains goes over by K·√(p1 − p2), a difference of some 10⁻⁴ of either. Their sum stays; (p1 − p2) follows (s/K)².
        double[] y = [1e6 + 100, 1e6, 0];
        OdeOutcome outcome = new OdeIntegrator(new Tanks()).Integrate(y, 0, 1000, new OdeOptions(1e-6, 100, 5000));
        Assert.Equal(OdeStopReason.EndTime, outcome.Reason);
        Assert.InRange(outcome.Steps, 20, 300);
        Assert.Equal(2e6 + 100, y[0] + y[1], 1e-6);
        double driven = Tanks.Source(1000) / Tanks.Conductance;
        Assert.Equal(driven * driven, y[0] - y[1], 1e-2 * driven * driven);
    }

    private static double Exact(double t) => 1 / (1 + (9 * Math.Exp(-t)));

    private sealed class Logistic : OdeSystem
    {
        public override int Dimension => 2;

        public override int ControlledDimension => 1;

        public override double AbsoluteScale(int index) => 1;

        public override bool Derivatives(double[] state, double[] derivatives)
        {
            derivatives[0] = state[0] * (1 - state[0]);
            derivatives[1] = state[0];
            return true;
        }
    }

    private sealed class Tanks : OdeSystem
    {
        public const double Conductance = 1000;

        public override int Dimension => 3;

        public override int ControlledDimension => 3;

        public override double AbsoluteScale(int index) => index == 2 ? 1000 : 1e6;

        public static double Source(double time) => 1e4 * (1 + (0.5 * Math.Sin(time / 50)));

        public override bool Derivatives(double[] state, double[] derivatives)
        {
            double difference = state[0] - state[1];
            double flow = Conductance * Math.Sign(difference) * Math.Sqrt(Math.Abs(difference));
            double source = Source(state[2]);
            derivatives[0] = source - flow;
            derivatives[1] = flow - source;
            derivatives[2] = 1;
            return true;
        }
    }

    private sealed class Relaxation : OdeSystem
    {
        public override int Dimension => 3;

        public override int ControlledDimension => 2;

        public override double AbsoluteScale(int index) => 1;

        public override bool Derivatives(double[] state, double[] derivatives)
        {
            derivatives[0] = (-1e6 * (state[0] - Math.Cos(state[1]))) - Math.Sin(state[1]);
            derivatives[1] = 1;
            derivatives[2] = state[0];
            return true;
        }
    }

    private sealed class Robertson : OdeSystem
    {
        public override int Dimension => 3;

        public override double AbsoluteScale(int index) => index == 1 ? 1e-5 : 1;

        public override bool Derivatives(double[] state, double[] derivatives)
        {
            double slow = 0.04 * state[0];
            double back = 1e4 * state[1] * state[2];
            double fast = 3e7 * state[1] * state[1];
            derivatives[0] = back - slow;
            derivatives[1] = slow - back - fast;
            derivatives[2] = fast;
            return true;
        }
    }
}

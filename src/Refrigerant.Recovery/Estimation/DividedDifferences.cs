using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Means and roots of covariances through the reduced model, by central divided differences. Allocates nothing after its making.</summary>
/// <remarks>
/// Nørgaard, Poulsen and Ravn, Automatica 36, 1627 (2000): with the columns s_j of the root, spread γ² = 3, f± = f(x ± γ·s_j) and f0 = f(x), the
/// mean is f0 + Σ(f+ + f− − 2·f0)/(2γ²), and the new root has the columns (f+ − f−)/(2γ) and √(γ² − 1)·(f+ + f− − 2·f0)/(2γ²), besides those of the
/// noise; Householder reflections make it square again.
/// </remarks>
internal sealed class DividedDifferences
{
    private const int N = StateIndex.Count;
    private const int Stride = FilterWorkspace.Stride;
    private const int Wide = FilterWorkspace.WideStride;
    private const double SpreadSquared = 3;

    /// <summary>s: the model's step, but for long gaps.</summary>
    private const double LargestStep = 2.5;

    private const double MostSteps = 60;

    private static readonly double Spread = Math.Sqrt(SpreadSquared);
    private static readonly double SecondWeight = Math.Sqrt(SpreadSquared - 1) / (2 * SpreadSquared);

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly FilterWorkspace _work;

    public DividedDifferences(ReducedModel model, EstimatorPrior prior, FilterWorkspace work)
    {
        _model = model;
        _prior = prior;
        _work = work;
    }

    /// <summary>Arrays of the calculation.</summary>
    public FilterWorkspace Work => _work;

    /// <summary>The model's step for a time, s.</summary>
    public static double StepFor(double duration) => Math.Max(LargestStep, duration / MostSteps);

    /// <summary>Moves mean and root on; variances of the noise stand in the workspace.</summary>
    public void Predict(double[] x, double[] root, in ReducedInputs inputs, double duration, double step)
    {
        double[] wide = _work.Wide;
        Array.Clear(wide, 0, wide.Length);
        Array.Clear(_work.Curvature, 0, _work.Curvature.Length);
        Array.Clear(_work.BendSum, 0, _work.BendSum.Length);
        Values(x);
        ReducedInputs near = inputs;
        ReducedState found = Find(x, ref near);
        ReducedState center = Move(x, _work.Value, in near, in found, duration, step, out double centerDissolved);
        double scaleKeeps = Math.Exp(-duration / _prior.ScaleTime);
        double gaugeKeeps = Math.Exp(-duration / _prior.SlowGaugeTime);
        for (int j = 0; j < N; j++)
        {
            Along(x, root, j, inputs.Phase);
            ReducedState plus = Move(_work.Plus, _work.PlusValue, in near, in found, duration, step, out double plusDissolved);
            ReducedState minus = Move(_work.Minus, _work.MinusValue, in near, in found, duration, step, out double minusDissolved);
            for (int i = 0; i < StateIndex.FirstMoving; i++)
            {
                double keeps = i == StateIndex.ScaleOffset ? scaleKeeps : i == StateIndex.GaugeDrift ? gaugeKeeps : 1;
                wide[(i * Wide) + j] = keeps * root[(i * Stride) + j];
            }

            Difference(j, StateIndex.Dissolved, plusDissolved, minusDissolved, centerDissolved);
            Difference(j, StateIndex.Delivered, plus.Delivered, minus.Delivered, center.Delivered);
            Difference(j, StateIndex.MetalTemperature, plus.MetalTemperature, minus.MetalTemperature, center.MetalTemperature);
            Difference(j, StateIndex.WetTemperature, plus.WetTemperature, minus.WetTemperature, center.WetTemperature);
            Difference(j, StateIndex.Temperature, plus.Temperature, minus.Temperature, center.Temperature);
            Bend();
        }

        x[StateIndex.ScaleOffset] *= scaleKeeps;
        x[StateIndex.GaugeDrift] *= gaugeKeeps;
        x[StateIndex.Dissolved] = centerDissolved + _work.BendSum[0];
        x[StateIndex.Delivered] = center.Delivered + _work.BendSum[1];
        x[StateIndex.MetalTemperature] = center.MetalTemperature + _work.BendSum[2];
        x[StateIndex.WetTemperature] = center.WetTemperature + _work.BendSum[3];
        x[StateIndex.Temperature] = center.Temperature + _work.BendSum[4];
        for (int i = 0; i < N; i++)
        {
            wide[(i * Wide) + FilterWorkspace.Noise + i] = Math.Sqrt(_work.NoiseVariance[i]);
        }

        SecondColumns();
        _work.Triangularize(root);
    }

    /// <summary>What the gauge should show, with slopes along the columns into the workspace.</summary>
    public double Gauge(double[] x, double[] root, in ReducedInputs inputs, out double second)
    {
        Values(x);
        ReducedInputs near = inputs;
        ReducedState found = Find(x, ref near);
        double center = Shown(x, _work.Value, in near, in found);
        double mean = center;
        second = 0;
        double[] slope = _work.Slope;
        Array.Clear(slope, 0, Stride);
        for (int j = 0; j < N; j++)
        {
            Along(x, root, j, inputs.Phase);
            double plus = Shown(_work.Plus, _work.PlusValue, in near, in found);
            double minus = Shown(_work.Minus, _work.MinusValue, in near, in found);
            slope[j] = (plus - minus) / (2 * Spread);
            double bend = plus + minus - (2 * center);
            mean += bend / (2 * SpreadSquared);
            second += SecondWeight * SecondWeight * bend * bend;
        }

        return mean;
    }

    /// <summary>Values of the states that are logarithms.</summary>
    public void Values(double[] states)
    {
        for (int i = 0; i < N; i++)
        {
            _work.Value[i] = StateIndex.IsLogarithm(i) ? Math.Exp(states[i]) : 0;
        }
    }

    /// <summary>What all points take over from the one in the middle.</summary>
    private ReducedState Find(double[] states, ref ReducedInputs inputs)
    {
        SigmaPoint point = SigmaPoint.From(states, _work.Value, _prior.Typical, _model.Table);
        _model.Find(ref point.State, in point.Parameters, in inputs);
        inputs.IsNeighbour = true;
        return point.State;
    }

    private ReducedState Move(double[] states, double[] values, in ReducedInputs inputs, in ReducedState found, double duration, double step, out double dissolved)
    {
        SigmaPoint point = SigmaPoint.From(states, values, _prior.Typical, _model.Table);
        point.State.Glide = found.Glide;
        point.State.Suction = found.Suction;
        _model.Advance(ref point.State, in point.Parameters, in inputs, duration, step);
        dissolved = states[StateIndex.Dissolved] + Math.Log(point.State.Dissolved / values[StateIndex.Dissolved]);
        return point.State;
    }

    /// <summary>
    /// The two points along a column of the root. Where there is vapor only, what is left of it goes by its logarithm, as the volume does: their quotient is what the gauge sees, and a straight
    /// line through a large one and none would leave it.
    /// </summary>
    private void Along(double[] x, double[] root, int column, AssumedPhase phase)
    {
        double[] plus = _work.Plus;
        double[] minus = _work.Minus;
        for (int i = 0; i < N; i++)
        {
            double move = Spread * root[(i * Stride) + column];
            plus[i] = x[i] + move;
            minus[i] = x[i] - move;
            if (StateIndex.IsLogarithm(i))
            {
                double factor = move == 0 ? 1 : Math.Exp(move);
                _work.PlusValue[i] = _work.Value[i] * factor;
                _work.MinusValue[i] = _work.Value[i] / factor;
            }
        }

        if (phase == AssumedPhase.VaporOnly)
        {
            double charge = _work.Value[StateIndex.Charge];
            double dissolved = _work.Value[StateIndex.Dissolved];
            double vapor = VaporLeft.Of(charge, x[StateIndex.Delivered], dissolved);
            double more = Spread * ((charge * root[column]) - root[(StateIndex.Delivered * Stride) + column] - (dissolved * root[(StateIndex.Dissolved * Stride) + column]));
            double factor = VaporLeft.Factor(more / vapor);
            _work.PlusValue[StateIndex.Charge] = plus[StateIndex.Delivered] + _work.PlusValue[StateIndex.Dissolved] + (vapor * factor);
            _work.MinusValue[StateIndex.Charge] = minus[StateIndex.Delivered] + _work.MinusValue[StateIndex.Dissolved] + (vapor / factor);
        }
    }

    private void Difference(int column, int row, double plus, double minus, double center)
    {
        _work.Wide[(row * Wide) + column] = (plus - minus) / (2 * Spread);
        _work.Bend[row - StateIndex.FirstMoving] = plus + minus - (2 * center);
    }

    /// <summary>Books the second differences along a column: their mean, and the sum of their products.</summary>
    private void Bend()
    {
        double[] bend = _work.Bend;
        for (int i = 0; i < StateIndex.Moving; i++)
        {
            _work.BendSum[i] += bend[i] / (2 * SpreadSquared);
            for (int k = 0; k <= i; k++)
            {
                _work.Curvature[(i * StateIndex.Moving) + k] += SecondWeight * SecondWeight * bend[i] * bend[k];
            }
        }
    }

    /// <summary>A root of the sum of products stands in for the columns themselves: as many as there are moving states, instead of one a state.</summary>
    private void SecondColumns()
    {
        const int M = StateIndex.Moving;
        double[] c = _work.Curvature;
        for (int i = 0; i < M; i++)
        {
            int row = (StateIndex.FirstMoving + i) * Wide;
            for (int k = 0; k <= i; k++)
            {
                double sum = c[(i * M) + k];
                for (int q = 0; q < k; q++)
                {
                    sum -= c[(i * M) + q] * c[(k * M) + q];
                }

                double pivot = c[(k * M) + k];
                c[(i * M) + k] = i == k ? Math.Sqrt(Math.Max(0, sum)) : pivot > 0 ? sum / pivot : 0;
                _work.Wide[row + FilterWorkspace.Second + k] = c[(i * M) + k];
            }
        }
    }

    private double Shown(double[] states, double[] values, in ReducedInputs inputs, in ReducedState found)
    {
        SigmaPoint point = SigmaPoint.From(states, values, _prior.Typical, _model.Table);
        point.State.Glide = found.Glide;
        point.State.Suction = found.Suction;
        _model.Evaluate(in point.State, in point.Parameters, in inputs, out ReducedOutput output);
        return output.SuctionPressure - _prior.Atmosphere + point.GaugeError;
    }
}

using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Where a filter has the going of the last liquid: the charge is then what has left, what oil holds and saturated vapor, m = ρ″·V. Allocates nothing.</summary>
internal sealed class LastLiquid
{
    private const int Stride = FilterWorkspace.Stride;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly FilterWorkspace _work;

    public LastLiquid(ReducedModel model, EstimatorPrior prior, FilterWorkspace work)
    {
        _model = model;
        _prior = prior;
        _work = work;
    }

    /// <summary>ln of the charge as a wet filter has it, and ln of the least charge with which liquid is left.</summary>
    public void ChargeOf(SquareRootFilter wet, out double location, out double scale, out double least)
    {
        scale = Math.Sqrt(wet.Variance(StateIndex.Charge));
        least = Math.Log(Gone(wet, out _, out _));

        // Mass balance: beyond what was told and its error only what the scale has received counts.
        location = Math.Min(wet.X[StateIndex.Charge], Math.Max(wet.MostCharge, least));
    }

    /// <summary>Standard deviation of ln of the least charge with which liquid is left.</summary>
    public double LeastSpread(SquareRootFilter wet)
    {
        double gone = Gone(wet, out double oil, out double vapor);
        return Math.Sqrt(Combine(wet, 0, 1 / gone, oil / gone, vapor / gone));
    }

    /// <summary>ln(charge) less ln of what is gone, in oil or vapor, and its variance; its slopes stand in the workspace.</summary>
    public double Distance(SquareRootFilter filter, out double variance)
    {
        double gone = Gone(filter, out double oil, out double vapor);
        variance = Combine(filter, 1, -1 / gone, -oil / gone, -vapor / gone);
        return filter.X[StateIndex.Charge] - Math.Log(gone);
    }

    /// <summary>Puts a filter there: two Gauss–Newton steps, each with twice the variance. By logarithms: a charge that was told far too low is then reached in one.</summary>
    /// <param name="filter">The filter.</param>
    /// <param name="mass">kg within which it happened.</param>
    public void Condition(SquareRootFilter filter, double mass)
    {
        for (int i = 0; i < 2; i++)
        {
            double distance = Distance(filter, out _);
            double sigma = (0.3 * mass / Math.Exp(filter.X[StateIndex.Charge])) + 0.002;
            filter.Condition(-distance, 2 * sigma * sigma);
        }
    }

    /// <summary>What has left, what oil holds and saturated vapor, kg.</summary>
    private double Gone(SquareRootFilter filter, out double oil, out double vapor)
    {
        oil = Math.Exp(filter.X[StateIndex.Dissolved]);
        vapor = _model.LastVapor(
            filter.X[StateIndex.Temperature], Math.Exp(filter.X[StateIndex.Volume]), Math.Exp(filter.X[StateIndex.Charge]) - oil - _prior.Typical.LiquidTaken);
        return Math.Max(1e-9, filter.X[StateIndex.Delivered] + oil + vapor);
    }

    private double Combine(SquareRootFilter filter, double byCharge, double byDelivered, double byDissolved, double byVolume)
    {
        double[] slope = _work.Slope;
        Array.Clear(slope, 0, Stride);
        VectorRows.Add(slope, 0, byCharge, filter.L, StateIndex.Charge * Stride, Stride);
        VectorRows.Add(slope, 0, byDelivered, filter.L, StateIndex.Delivered * Stride, Stride);
        VectorRows.Add(slope, 0, byDissolved, filter.L, StateIndex.Dissolved * Stride, Stride);
        VectorRows.Add(slope, 0, byVolume, filter.L, StateIndex.Volume * Stride, Stride);
        return VectorRows.Dot(slope, 0, slope, 0, Stride);
    }
}

using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>How far the reduced model is from logs: residuals over what each reading is trusted to, then those of the priors.</summary>
/// <remarks>
/// The unknowns z are standardized: fitted value = prior mean + z times its standard deviation, so that the prior's residuals are z itself.
/// One instance serves one thread.
/// </remarks>
internal sealed class FitProblem : ILeastSquaresProblem
{
    /// <summary>s: longest step of the reduced model.</summary>
    private const double LongestStep = 6;

    /// <summary>Pa, and share of the absolute pressure: what the reduced model leaves out of the pressure.</summary>
    private const double PressureFloor = 6000, PressureShare = 0.02;

    /// <summary>kg, and share of the charge: hoses pull on the scale, and hold refrigerant on its way there.</summary>
    private const double WeightFloor = 0.06, WeightShare = 0.008;

    /// <summary>Prior standard deviations that nothing is moved beyond.</summary>
    private const double Farthest = 5;

    /// <summary>Residuals are held below this: where the model is far outside what it was made for.</summary>
    private const double Wildest = 1e4;

    /// <summary>Exponent of the wetted share, 1/s in which metal evens out, nearly one lump, and conductance to boiling liquid over that to vapor.</summary>
    private const double WetExponent = 0.5, Mixing = 1.0 / 30, DryFactor = 30;

    /// <summary>The metal that counts is wetted whole at the start: share of the volume that liquid fills then, at least.</summary>
    private const double LeastLevel = 0.05;

    private readonly LogCourse[] _courses;
    private readonly ReducedModel[] _models;
    private readonly ReducedParameters[] _typical;
    private readonly FitPrior _prior;
    private readonly double _gaugeNoise;
    private readonly double _scaleStep;
    private readonly double[] _values;

    public FitProblem(LogCourse[] courses, ReducedModel[] models, ReducedParameters[] typical, FitPrior prior, Instruments instruments)
    {
        _courses = courses;
        _models = models;
        _typical = typical;
        _prior = prior;
        _gaugeNoise = 0.15 * instruments.SuctionGauge.ErrorLimitPascals;
        _scaleStep = instruments.Scale.ResolutionKilograms;
        _values = new double[prior.Mean.Length];
        foreach (LogCourse course in courses)
        {
            foreach (LogCourse.Moment moment in course.Moments)
            {
                Readings += (double.IsNaN(moment.Pressure) ? 0 : 1) + (double.IsNaN(moment.Delivered) ? 0 : 1);
            }
        }
    }

    /// <inheritdoc/>
    public int Unknowns => _prior.Mean.Length;

    /// <inheritdoc/>
    public int Readings { get; }

    /// <inheritdoc/>
    public void Residuals(double[] unknowns, double[] residuals)
    {
        for (int i = 0; i < unknowns.Length; i++)
        {
            _values[i] = _prior.Mean[i] + (_prior.Sigma[i] * Bounded(unknowns[i]));
        }

        int at = 0;
        for (int log = 0; log < _courses.Length; log++)
        {
            Run(log, residuals, ref at);
        }

        for (int i = 0; i < at; i++)
        {
            residuals[i] = Require.IsFinite(residuals[i]) ? Math.Max(-Wildest, Math.Min(Wildest, residuals[i])) : Wildest;
        }

        Array.Copy(unknowns, 0, residuals, at, unknowns.Length);
    }

    /// <summary>An unknown within the bounds that nothing is moved beyond.</summary>
    public static double Bounded(double unknown) => Math.Max(-Farthest, Math.Min(Farthest, unknown));

    /// <summary>The time of each residual's reading as log plus share of that log, for splitting them into blocks.</summary>
    public double[] Places()
    {
        var places = new double[Readings];
        int at = 0;
        for (int log = 0; log < _courses.Length; log++)
        {
            LogCourse course = _courses[log];
            foreach (LogCourse.Moment moment in course.Moments)
            {
                double place = log + (0.999999 * (moment.Time - course.Start) / Math.Max(1e-9, course.End - course.Start));
                if (!double.IsNaN(moment.Pressure))
                {
                    places[at++] = place;
                }

                if (!double.IsNaN(moment.Delivered))
                {
                    places[at++] = place;
                }
            }
        }

        return places;
    }

    private ReducedParameters Parameters(int log)
    {
        ReducedParameters made = _typical[log];
        ReadOnlySpan<double> own = _values.AsSpan(FitIndex.Set(log), FitIndex.PerLog);
        made.Displacement = Math.Exp(_values[FitIndex.Displacement]);
        made.HoseResistance *= Math.Exp(_values[FitIndex.Hose]);
        made.Clearance = Math.Exp(_values[FitIndex.Clearance]);
        made.Warming = Math.Max(0, Math.Min(1, _values[FitIndex.Warming]));
        made.Charge = Math.Exp(own[FitIndex.Charge]);
        made.Volume = Math.Exp(own[FitIndex.Volume]);
        made.OuterConductance = Math.Exp(own[FitIndex.Outer]);
        made.MetalCapacity = Math.Exp(own[FitIndex.Metal]);
        made.InnerConductance = Math.Exp(own[FitIndex.Inner]);
        made.WetShare = Math.Max(0.02, Math.Min(1, own[FitIndex.WetShare]));
        made.WetExponent = WetExponent;
        made.FullLevel = Math.Max(LeastLevel, Math.Min(1, LevelAtStart(_models[log].Table, own)));
        made.Mixing = Mixing;
        made.DryFactor = DryFactor;
        made.Drift = Math.Max(0, Math.Min(1, _values[FitIndex.Drift]));
        made.LiquidTaken = _courses[log].DeliveredBefore;
        made.FirstTemperature = own[FitIndex.Temperature];
        made.OilCapacity = Math.Exp(own[FitIndex.OilCapacity]);
        made.OilTime = Math.Exp(own[FitIndex.OilTime]);
        made.DischargePressure = _models[log].Table.BubblePressure(own[FitIndex.Condensing]);
        return made;
    }

    /// <summary>Share of the volume that liquid fills before anything leaves.</summary>
    private static double LevelAtStart(SaturationTable table, ReadOnlySpan<double> own)
    {
        table.At(own[FitIndex.Temperature], out SaturationValues at);
        double density = Math.Exp(own[FitIndex.Charge] - own[FitIndex.Volume]);
        return (density - at.VaporDensity) * at.LiquidVolume / (1 - (at.VaporDensity * at.LiquidVolume));
    }

    private void Run(int log, double[] residuals, ref int at)
    {
        ReducedParameters parameters = Parameters(log);
        ReducedModel model = _models[log];
        LogCourse course = _courses[log];
        ReadOnlySpan<double> own = _values.AsSpan(FitIndex.Set(log), FitIndex.PerLog);
        double condensing = parameters.DischargePressure;
        double offset = own[FitIndex.ScaleOffset];
        double lag = _values[FitIndex.Lag];
        double bias = own[FitIndex.GaugeBias];
        double weight = Math.Sqrt((WeightFloor * WeightFloor) + (_scaleStep * _scaleStep) + Square(WeightShare * _typical[log].Charge));
        var state = new ReducedState
        {
            Temperature = own[FitIndex.Temperature],
            MetalTemperature = own[FitIndex.Temperature],
            WetTemperature = own[FitIndex.Temperature],
            Dissolved = Math.Min(0.5 * parameters.Charge, Math.Exp(own[FitIndex.Dissolved])),
            Delivered = course.DeliveredBefore,
        };
        LogCourse.Moment[] moments = course.Moments;
        for (int i = 0; i < moments.Length; i++)
        {
            ref readonly LogCourse.Moment moment = ref moments[i];
            parameters.DischargePressure = double.IsNaN(moment.Discharge) ? condensing : moment.Discharge;
            var inputs = new ReducedInputs(moment.AirTemperature, moment.IsDrawing) { Passing = moment.Passing };
            model.Evaluate(in state, in parameters, in inputs, out ReducedOutput shown);
            if (!double.IsNaN(moment.Pressure))
            {
                double trust = Math.Sqrt((_gaugeNoise * _gaugeNoise) + (PressureFloor * PressureFloor) + Square(PressureShare * moment.Pressure));
                residuals[at++] = (moment.Pressure - shown.SuctionPressure - bias) / trust;
            }

            if (!double.IsNaN(moment.Delivered))
            {
                residuals[at++] = (moment.Delivered - state.Delivered + (lag * shown.Flow) - offset) / weight;
            }

            double seconds = i + 1 < moments.Length ? moments[i + 1].Time - moment.Time : 0;
            int steps = (int)Math.Ceiling(seconds / LongestStep);
            for (int k = 0; k < steps; k++)
            {
                model.AdvanceSecondOrder(ref state, in parameters, in inputs, seconds / steps);
            }
        }
    }

    private static double Square(double value) => value * value;
}

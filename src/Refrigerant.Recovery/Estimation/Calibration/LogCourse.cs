using System;
using System.Collections.Generic;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>A log as the fit takes it: what acted on the appliance from moment to moment, and at fewer moments what was read. SI.</summary>
internal sealed class LogCourse
{
    /// <summary>Readings compared in a log, about: more of them only repeat what the model leaves out.</summary>
    private const int Compared = 140;

    /// <summary>s after a start or stop of the machine in which more readings are compared.</summary>
    private const double Lively = 5;

    private LogCourse(Moment[] moments, double deliveredBefore)
    {
        Moments = moments;
        DeliveredBefore = deliveredBefore;
    }

    /// <summary>The moments in order of time: at each what holds until the next.</summary>
    public Moment[] Moments { get; }

    /// <summary>What had left the appliance before the first moment, by the scale, kg.</summary>
    public double DeliveredBefore { get; }

    /// <summary>Time of the first moment, s.</summary>
    public double Start => Moments[0].Time;

    /// <summary>Time of the last moment, s.</summary>
    public double End => Moments[Moments.Length - 1].Time;

    /// <summary>Takes a log in, from a reading on.</summary>
    /// <param name="logged">Job and log.</param>
    /// <param name="scale">Its weights.</param>
    /// <param name="first">The first reading taken: what has left before is what the scale has gained.</param>
    /// <param name="table">The refrigerant.</param>
    /// <param name="instruments">Gauge and scale.</param>
    public static LogCourse Of(LoggedJob logged, ScaleCourse scale, int first, SaturationTable table, Instruments instruments)
    {
        IReadOnlyList<JobReading> readings = logged.Log.Readings;
        double atmosphere = logged.Job.Barometer.Pressure.Pascals;
        double air = logged.Job.Appliance.SurroundingsKelvin;
        double discharge = double.NaN;
        double start = readings[first].Time.Seconds;
        double spacing = (readings[readings.Count - 1].Time.Seconds - start) / Compared;
        var moments = new List<Moment>();
        double compared = double.NegativeInfinity;
        double switched = start;
        bool drew = false;
        var passing = new PassingVapor(logged.Job, table, instruments.SuctionGauge.ErrorLimitPascals);
        var cylinder = new LoggedCylinder(logged, scale);
        bool passed = false;
        for (int i = first; i < readings.Count; i++)
        {
            JobReading reading = readings[i];
            double time = reading.Time.Seconds;
            air = reading.Ambient?.Kelvins ?? air;
            discharge = reading.DischargeGaugePressure is { } high ? atmosphere + high.Pascals : discharge;
            bool draws = reading.MachineRunning && reading.ValveOpen;
            double outlet = reading.DischargeGaugePressure?.Pascals ?? double.NaN;
            cylinder.MoveTo(i);
            bool passes = passing.Check(draws, reading.SuctionGaugePressure?.Pascals ?? double.NaN, outlet, cylinder.Number, cylinder.Content, air, double.NaN);
            bool turned = i > first && (draws != drew || passes != passed);
            switched = turned ? time : switched;
            drew = draws;
            passed = passes;
            double wait = time - switched < Lively ? Math.Min(spacing, Math.Max(1, 0.25 * (time - switched))) : spacing;
            bool compare = time - compared >= wait - 1e-6;
            if (!compare && !turned && i < readings.Count - 1)
            {
                continue;
            }

            // Behind a shut valve the gauge does not see the appliance; within the switching itself it lags.
            compare &= !turned;
            compared = compare ? time : compared;
            moments.Add(new Moment
            {
                Time = time,
                AirTemperature = air,
                Discharge = double.IsNaN(discharge) ? passing.CylinderPressure(cylinder.Number, cylinder.Content, air) : discharge,
                IsDrawing = draws,
                IsPassing = passes,
                Pressure = compare && !passes && reading.ValveOpen && reading.SuctionGaugePressure is { } gauge ? atmosphere + gauge.Pascals : double.NaN,
                Delivered = compare ? scale.Delivered[i] : double.NaN,
                Gained = scale.Delivered[i],
            });
        }

        for (int k = 0; k + 1 < moments.Count; k++)
        {
            Moment moment = moments[k];
            double gained = moments[k + 1].Gained - moment.Gained;
            if (moment.IsPassing && gained > 0)
            {
                // All that comes then is taken from the scale.
                moment.IsDrawing = false;
                moment.Passing = gained / (moments[k + 1].Time - moment.Time);
                moments[k] = moment;
            }
        }

        return new LogCourse([.. moments], first > 0 && !double.IsNaN(scale.Delivered[first]) ? scale.Delivered[first] : 0);
    }

    /// <summary>One moment of a log. What is not known or not compared is not a number.</summary>
    internal struct Moment
    {
        /// <summary>s.</summary>
        public double Time;

        /// <summary>K.</summary>
        public double AirTemperature;

        /// <summary>Absolute pressure at the machine's outlet, Pa: what was read, or that of a cylinder that holds vapor alone.</summary>
        public double Discharge;

        /// <summary>Whether the machine draws from the appliance from here on.</summary>
        public bool IsDrawing;

        /// <summary>Absolute pressure by the gauge at the machine's inlet, Pa.</summary>
        public double Pressure;

        /// <summary>By the scale, kg.</summary>
        public double Delivered;

        /// <summary>The same where it is not compared.</summary>
        public double Gained;

        /// <summary>Whether vapor flows through the machine by itself from here on, so that the gauge shows the cylinder, and how much of it, kg/s.</summary>
        public bool IsPassing;

        /// <inheritdoc cref="IsPassing"/>
        public double Passing;
    }
}

using System;
using System.Globalization;

namespace Refrigerant.Recovery.Estimation;

/// <summary>One reading of a job, plain SI; what was not read is left alone, and <see cref="double.NaN"/>. A gauge or a scale that is set to NaN is there and broken, and is named so.</summary>
public record struct RawReading
{
    /// <summary>For an initializer: at time zero, nothing read, the machine running with its valves open.</summary>
    public RawReading()
        : this(0)
    {
    }

    /// <summary>A reading of nothing but the clock, the machine running with its valves open.</summary>
    /// <param name="time">Time from any start, s.</param>
    public RawReading(double time)
    {
        Time = time;
        SuctionGaugePressure = double.NaN;
        GrossWeight = double.NaN;
        AirTemperature = double.NaN;
        PipeTemperature = double.NaN;
        DischargeGaugePressure = double.NaN;
        IsMachineRunning = true;
        IsValveOpen = true;
        Cylinder = -1;
        IsGaugeGiven = IsWeightGiven = false;
    }

    /// <summary>Time from any start, s.</summary>
    public double Time { get; set; }

    /// <summary>Gauge pressure at the machine's inlet, Pa.</summary>
    public double SuctionGaugePressure
    {
        readonly get;
        set
        {
            field = value;
            IsGaugeGiven = true;
        }
    }

    /// <summary>Weight on the scale, cylinder included, kg.</summary>
    public double GrossWeight
    {
        readonly get;
        set
        {
            field = value;
            IsWeightGiven = true;
        }
    }

    /// <summary>Temperature of the air, K.</summary>
    public double AirTemperature { get; set; }

    /// <summary>Temperature of a pipe of the appliance, K.</summary>
    public double PipeTemperature { get; set; }

    /// <summary>Gauge pressure at the machine's outlet, Pa.</summary>
    public double DischargeGaugePressure { get; set; }

    /// <summary>Whether the machine runs.</summary>
    public bool IsMachineRunning { get; set; }

    /// <summary>Whether the valves between appliance and machine are open.</summary>
    public bool IsValveOpen { get; set; }

    /// <summary>Number of the cylinder on the scale in the job's list, from 0; beyond its end one that is not on it, whose limit is not watched; negative: the same as before.</summary>
    public int Cylinder { get; set; }

    /// <summary>Whether the gauge was read, be it no number.</summary>
    internal bool IsGaugeGiven { readonly get; private set; }

    /// <summary>Whether the scale was read, be it no number.</summary>
    internal bool IsWeightGiven { readonly get; private set; }

    internal static RawReading From(JobReading reading) => new(reading.Time.Seconds)
    {
        SuctionGaugePressure = reading.SuctionGaugePressure?.Pascals ?? double.NaN,
        IsGaugeGiven = reading.SuctionGaugePressure is not null,
        GrossWeight = reading.GrossWeight?.Kilograms ?? double.NaN,
        IsWeightGiven = reading.GrossWeight is not null,
        AirTemperature = reading.Ambient?.Kelvins ?? double.NaN,
        PipeTemperature = reading.PipeTemperature?.Kelvins ?? double.NaN,
        DischargeGaugePressure = reading.DischargeGaugePressure?.Pascals ?? double.NaN,
        IsMachineRunning = reading.MachineRunning,
        IsValveOpen = reading.ValveOpen,
    };

    /// <summary>Time and what was read, culture-invariant.</summary>
    public override readonly string ToString() => FormattableString.Invariant($"{Time:G7} s")
        + Part(", suction ", SuctionGaugePressure, " Pa gauge")
        + Part(", scale ", GrossWeight, " kg")
        + Part(", air ", AirTemperature, " K")
        + Part(", pipe ", PipeTemperature, " K")
        + Part(", discharge ", DischargeGaugePressure, " Pa gauge")
        + (IsMachineRunning ? string.Empty : ", machine off")
        + (IsValveOpen ? string.Empty : ", valves shut");

    private static string Part(string before, double value, string unit) => double.IsNaN(value) ? string.Empty : before + value.ToString("G7", CultureInfo.InvariantCulture) + unit;
}

namespace Refrigerant.Recovery.Estimation;

/// <summary>A block of <see cref="SampleLog"/>. What is missing is not a number.</summary>
internal struct SampleBlock
{
    /// <summary>s.</summary>
    public double Duration;

    /// <summary>K.</summary>
    public double AirTemperature;

    /// <summary>Pa, gauge.</summary>
    public double Gauge;

    /// <summary>kg.</summary>
    public double Delivered;

    /// <summary>Liquid moved meanwhile, kg.</summary>
    public double LiquidMoved;

    /// <summary>Vapor that came by itself meanwhile, kg.</summary>
    public double Passed;

    /// <summary>Whether the machine draws.</summary>
    public bool IsDrawing;

    /// <summary>Share of the slow error of the gauge that lasts through the block.</summary>
    public double SlowKeeps;

    /// <summary>1/variance of the gauge's innovation, 1/Pa².</summary>
    public double GaugePrecision;

    /// <summary>Gains on the gauge's innovation.</summary>
    public double BiasGain;

    public double SlowGain;

    /// <summary>Share of the scale's offset that lasts through the block.</summary>
    public double OffsetKeeps;

    /// <summary>1/variance of the scale's innovation, 1/kg².</summary>
    public double ScalePrecision;

    /// <summary>Gain on the scale's innovation.</summary>
    public double OffsetGain;
}

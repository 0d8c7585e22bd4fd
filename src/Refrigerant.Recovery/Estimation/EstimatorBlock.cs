namespace Refrigerant.Recovery.Estimation;

/// <summary>The readings of some seconds as the filters take them: averaged, checked, in SI. What is missing is not a number.</summary>
internal struct EstimatorBlock
{
    /// <summary>At its end, s from the start.</summary>
    public double Time;

    /// <summary>Since the end of the last one, s.</summary>
    public double Duration;

    /// <summary>Gauge pressure at the machine's inlet, Pa.</summary>
    public double Gauge;

    /// <summary>What the scale shows to have left the appliance, kg.</summary>
    public double Delivered;

    /// <summary>Liquid that was moved meanwhile, as the scale shows it, kg; less than none where it ran back.</summary>
    public double LiquidMoved;

    /// <summary>Vapor that came by itself meanwhile beside what the machine draws, as the scale shows it, kg.</summary>
    public double Passed;

    /// <summary>Whether vapor flows through the machine by itself, so that the gauge shows the cylinder.</summary>
    public bool IsByItself;

    /// <summary>Of the air, K.</summary>
    public double AirTemperature;

    /// <summary>Of a pipe of the appliance, K.</summary>
    public double PipeTemperature;

    /// <summary>Condensing temperature from the discharge pressure, K.</summary>
    public double CondensingTemperature;

    /// <summary>Whether the machine runs with its valves open.</summary>
    public bool IsDrawing;
}

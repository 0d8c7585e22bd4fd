using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What an estimate did not use of its readings, and why.</summary>
[Flags]
public enum UnusedReadings
{
    /// <summary>All was used.</summary>
    None = 0,

    /// <summary>The time is no number: the whole reading was left out.</summary>
    TimeNotANumber = 1,

    /// <summary>The time is that of the reading before, or earlier: the whole reading was left out.</summary>
    TimeNotLater = 2,

    /// <summary>The gauge's reading is no number.</summary>
    GaugeNotANumber = 4,

    /// <summary>The gauge's reading lies outside what the gauge can show, or below absolute zero.</summary>
    GaugeOutOfRange = 8,

    /// <summary>The gauge does not agree with the refrigerant and its temperature: wrong unit, absolute for gauge, or another refrigerant.</summary>
    GaugeInconsistent = 16,

    /// <summary>The gauge shows the same while the pressure must fall.</summary>
    GaugeStuck = 32,

    /// <summary>The scale's reading is no number.</summary>
    WeightNotANumber = 64,

    /// <summary>The scale's reading lies outside what a scale can show.</summary>
    WeightOutOfRange = 128,

    /// <summary>The scale's reading jumped; until it settles it is left out.</summary>
    WeightJumped = 256,

    /// <summary>The scale shows the same while refrigerant must flow.</summary>
    WeightStuck = 512,

    /// <summary>A temperature is no number, or outside −100 °C to 130 °C.</summary>
    TemperatureOutOfRange = 1024,

    /// <summary>The discharge pressure is no number, or outside the saturation curve.</summary>
    DischargeOutOfRange = 2048,

    /// <summary>The valve is shut: what the gauge shows is not the appliance's pressure.</summary>
    GaugeShutOff = 4096,

    /// <summary>
    /// The time jumps ahead, by hours or by more than what the scale gained allows: the whole reading was left out; where the next one goes on from there, the clock was set and no time has passed.
    /// Or the clock counts thousandths of a second, or thousands of them: then it is divided, or multiplied.
    /// </summary>
    TimeJumped = 8192,

    /// <summary>The scale's first reading is what the cylinder should weigh in another unit, lb or kg: none of them is used.</summary>
    WeightInconsistent = 16384,
}

namespace Refrigerant.Recovery.Findings;

/// <summary>What kind of quantity a <see cref="FindingValue"/> is.</summary>
public enum FindingValueKind
{
    /// <summary>A name, a mark, a date: no quantity.</summary>
    Text = 0,

    /// <summary>A plain number.</summary>
    Number,

    /// <summary>A share; in percent for people.</summary>
    Share,

    /// <summary>Mass, kg.</summary>
    Mass,

    /// <summary>Absolute pressure, Pa.</summary>
    AbsolutePressure,

    /// <summary>Gauge pressure, Pa above the air at the place; negative is vacuum.</summary>
    GaugePressure,

    /// <summary>Depth of vacuum, Pa below an atmosphere.</summary>
    Vacuum,

    /// <summary>Difference of pressures, Pa.</summary>
    PressureDifference,

    /// <summary>Rise of pressure with temperature, Pa/K.</summary>
    PressurePerTemperature,

    /// <summary>Temperature, K.</summary>
    Temperature,

    /// <summary>Difference of temperatures, K.</summary>
    TemperatureDifference,

    /// <summary>Volume, m³.</summary>
    Volume,

    /// <summary>Length, m.</summary>
    Length,

    /// <summary>Time, s.</summary>
    Duration,

    /// <summary>Electric or shaft power, W.</summary>
    Power,

    /// <summary>Flow of heat, W.</summary>
    HeatFlow,

    /// <summary>Flow of mass, kg/s.</summary>
    MassFlow,

    /// <summary>Flow of volume, m³/s.</summary>
    VolumeFlow,

    /// <summary>Density or concentration, kg/m³.</summary>
    Density,
}

namespace Refrigerant.Recovery.Planning;

/// <summary>How something stands in a hookup.</summary>
public enum HookupPosition
{
    /// <summary>Open.</summary>
    Open = 0,

    /// <summary>Shut.</summary>
    Shut,

    /// <summary>Opened by the gauge, not wide.</summary>
    Throttled,

    /// <summary>On, running.</summary>
    On,

    /// <summary>Off.</summary>
    Off,

    /// <summary>Connected, so that it can stop the machine.</summary>
    Connected,

    /// <summary>Bypassed, so that it does not stop the machine.</summary>
    Bypassed,

    /// <summary>In its clearing position.</summary>
    Clearing,

    /// <summary>In a bath of ice and water.</summary>
    IceBath,

    /// <summary>In a bath of water.</summary>
    WaterBath,

    /// <summary>In the stream of a fan.</summary>
    FanStream,

    /// <summary>In the shade, in still air.</summary>
    Shade,

    /// <summary>Read and written down.</summary>
    Read,
}

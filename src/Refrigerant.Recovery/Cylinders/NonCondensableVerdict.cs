namespace Refrigerant.Recovery.Cylinders;

/// <summary>Whether the vapor in a cylinder holds more air and other non-condensable gases than the purity standard allows.</summary>
public enum NonCondensableVerdict
{
    /// <summary>At or below the limit, with the accuracy of the gauges counted.</summary>
    WithinLimit = 0,

    /// <summary>Above the limit, with the accuracy of the gauges counted.</summary>
    AboveLimit,

    /// <summary>The accuracy of the gauges, the glide of the blend or the state of the cylinder does not allow a verdict.</summary>
    CannotTell,
}

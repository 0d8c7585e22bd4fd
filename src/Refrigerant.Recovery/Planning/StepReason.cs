namespace Refrigerant.Recovery.Planning;

/// <summary>Why a step is done as it is, where that is not plain.</summary>
public enum StepReason
{
    /// <summary>It is the usual next step.</summary>
    Usual = 0,

    /// <summary>The pull goes on below the level until a hold would pass: deeper.</summary>
    PullDeeper,

    /// <summary>The pull goes on at the level until the liquid is gone: longer.</summary>
    PullLonger,

    /// <summary>Heat goes into the appliance meanwhile, since that ends sooner.</summary>
    Warm,

    /// <summary>The cylinder is cooled meanwhile, since it would become too hot.</summary>
    Cool,

    /// <summary>The inlet is throttled, so that the discharge pressure stays below the cut-out.</summary>
    Throttle,

    /// <summary>It goes on until a limit stops it, since nothing better is at hand.</summary>
    UntilLimit,

    /// <summary>It is stopped where a person would give up.</summary>
    GiveUp,

    /// <summary>Another cylinder is cooler or emptier than the one connected.</summary>
    CoolerCylinder,

    /// <summary>Vapor goes into the cylinder before liquid goes there through the machine, so that none flashes at a vacuum.</summary>
    VaporFirst,

    /// <summary>The inlet is throttled, so that what is liquid in the appliance does not freeze to a solid.</summary>
    KeepLiquid,

    /// <summary>It stops where another cylinder, cooler or emptier, lets the machine go on faster.</summary>
    UntilChange,
}

using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-245ca, 1,1,2,2,3-pentafluoropropane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R245ca
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-245ca",
        Name = "1,1,2,2,3-pentafluoropropane",
        CasNumber = "679-86-7",
        Source = "Yong Zhou & Eric W. Lemmon, (2016), Equation of State for the Thermodynamic Properties of "
            + "1,1,2,2,3-Pentafluoropropane (R-245ca), Int. J. Thermophys., vol. 37, 1--11, "
            + "doi:10.1007/s10765-016-2039-z",
        MolarMass = 0.13404794,
        GasConstant = 8.3144621,
        ReducingTemperature = 447.57,
        ReducingMolarDensity = 3920,
        CriticalTemperature = 447.57,
        CriticalPressure = 3940740.488750428,
        CriticalMolarDensity = 3920,
        AcentricFactor = 0.35456541912358985,
        MinimumTemperature = 196,
        MaximumTemperature = 450,
        MaximumPressure = 10000000,
        IdealGas = new IdealHelmholtz(
            logTau: 7.888,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 0.8843, 1.9326585785463726 },
                { 14.46, 2.5068704336751795 },
                { 5.331, 6.323033268539 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.04489247, 4, 1, 0 },
                { 1.526476, 1, 0.26, 0 },
                { -2.40832, 1, 1, 0 },
                { -0.5288088, 2, 1.2, 0 },
                { 0.18222346, 3, 0.67, 0 },
                { -1.063228, 1, 1.92, 2 },
                { -0.223149, 3, 2, 2 },
                { 1.18738, 2, 1.5, 1 },
                { -0.9772383, 2, 1.93, 2 },
                { -0.02296938, 7, 1.06, 1 },
            },
            Gaussian = new double[,]
            {
                { 1.364444, 1, 0.17, 1.16, 2.4, 1.265, 0.55 },
                { -0.5080666, 1, 3.9, 1.1, 1.5, 0.42, 0.724 },
                { -0.06649496, 3, 1, 1.64, 4.2, 0.864, 0.524 },
                { -1.128359, 3, 1, 13.8, 379, 1.15, 0.857 },
            },
        },
    };
}

#!/usr/bin/env python3
"""Hard cases of a complete set, RF-level truth: writes detector-transient-hard.json to standard output."""
import json, sys, numpy as np
from scipy.optimize import minimize_scalar
from refcommon import *
def case(name, f, L, Q, Is, n, R, Co, stations, Ca=200e-12, Ra=25., Cc=47e-12, off=0.0):
    nvt=n*VT; Cs = Ca if Cc is None else Ca*Cc/(Ca+Cc)
    w=2*np.pi*f; Rp=Q*w*L
    def H(C,w=w): Ys=1/(Ra+1/(1j*w*Cs)); return Ys/(Ys+1/Rp+1j*w*C+1/(1j*w*L))
    C0=1/(w*w*L)-Cs
    C=minimize_scalar(lambda C:-abs(H(C)),bounds=(0.9*C0,1.1*C0),method='bounded',options=dict(xatol=1e-19)).x
    C*=1+off
    A=np.array([[-1/(Ra*Cs),-1/(Ra*Cs),0,0],[-1/(Ra*C),-1/(Ra*C)-1/(Rp*C),-1/C,0],[0,1/L,0,0],[0,0,0,-1/(R*Co)]])
    B,b,c=np.array([1/(Ra*Cs),1/(Ra*C),0,0]),np.array([0,-1/C,0,1/Co]),np.array([0,1.0,0,-1.0])
    E=[s[1] for s in stations]; m=[s[2] for s in stations]; fc=[s[0] for s in stations]; fm=[s[3] for s in stations]
    beats=sorted({abs(fc[i]-fc[0]) for i in range(1,len(fc))})
    tones=list(dict.fromkeys(fm))+beats
    res={}
    settle,dur=5e-3,60e-3
    for N in (256,512):
        h=1/f/N; Ec=np.array(E)/np.sinc(np.array(fc)*h)**2
        x,i,_,_,_=run(A,B,b,c,Is,nvt,Ec,m,fc,fm,h,[0,0,0,0],int(round(settle*f)),N,1,3,f,'foh',0.0,1e-13)
        x,i,o,it,rw=run(A,B,b,c,Is,nvt,Ec,m,fc,fm,h,x,int(round(dur*f)),N,1,3,f,'foh',settle,1e-13,i0=i)
        vo=o[:,0]; dt=1/f; t=(np.arange(len(vo))+.5)*dt
        T=lambda q:abs(2*np.mean(vo*np.exp(-2j*np.pi*q*t))/np.sinc(q*dt))
        r=dict(dc=vo.mean(),h2=T(2*fm[0])/T(fm[0]),h3=T(3*fm[0])/T(fm[0]),rin=o[:,3].mean()/o[:,4].mean())
        for q in tones: r['t%g'%q]=T(q)
        res[N]=r
    truth={k:res[512][k]+(res[512][k]-res[256][k])/3 for k in r}
    QL=1/(1/Q+w*L/truth['rin'])
    inp=dict(stations=[dict(frequency=q[0],emf=q[1],modulation=[dict(frequency=q[3],depth=q[2])]) for q in stations],aerial=dict(resistance=Ra,capacitance=Ca),
       tunedCircuit=dict(inductance=L,capacitance=C,parallelResistance=Rp),detector=dict(saturationCurrent=Is,ideality=n),load=dict(resistance=R,capacitance=Co),settle=settle,duration=dur,tones=tones)
    if Cc is not None: inp['couplingCapacitor']=Cc
    sig=lambda v: float('%.8g'%v)
    return dict(name=name,input=inp,loadedQ=float('%.3g'%QL),result=dict(Vdc_V=sig(truth['dc']),tones_peak_V=[sig(truth['t%g'%q]) for q in tones],H2_ratio=sig(truth['h2']),H3_ratio=sig(truth['h3']),Rin_diode_ohm=sig(truth['rin'])),
       change_N256_to_N512=dict(Vdc=float('%.2g'%(res[256]['dc']/res[512]['dc']-1)),first_tone=float('%.2g'%(res[256]['t%g'%tones[0]]/res[512]['t%g'%tones[0]]-1))))
LW=dict(f=200e3,L=2.2e-3); MW=dict(f=1e6,L=220e-6)
G=dict(Is=0.5e-6,n=1.1)
C=[
('lw lowQ strong',dict(**LW,Q=15,**G,R=4e3,Co=1e-9,stations=[(200e3,0.5,0.8,1000)])),
('mw lowQ strong',dict(**MW,Q=15,**G,R=4e3,Co=1e-9,stations=[(1e6,0.5,0.8,1000)])),
('mw very strong deep',dict(**MW,Q=100,**G,R=10e3,Co=470e-12,stations=[(1e6,1.0,0.95,1000)])),
('mw 100% depth',dict(**MW,Q=150,Is=2e-6,n=1.3,R=22e3,Co=1e-9,stations=[(1e6,0.05,1.0,1000)])),
('mw 3kHz clip',dict(**MW,Q=60,**G,R=100e3,Co=1e-9,stations=[(1e6,0.2,0.8,3000)])),
('lw silicon',dict(**LW,Q=120,Is=4e-9,n=1.9,R=100e3,Co=1e-9,stations=[(200e3,0.05,0.5,1000)])),
('lw hot carrier Is5u',dict(**LW,Q=120,Is=5e-6,n=1.05,R=2e3,Co=2e-9,stations=[(200e3,0.02,0.5,400)])),
('mw faint 1mV',dict(**MW,Q=150,**G,R=47e3,Co=470e-12,stations=[(1e6,0.001,0.4,1000)])),
('mw no coupling cap',dict(f=1e6,L=100e-6,Q=100,**G,R=10e3,Co=1e-9,Cc=None,Ca=100e-12,stations=[(1e6,0.1,0.5,1000)])),
('mw two 9k strong lowQ',dict(**MW,Q=20,**G,R=10e3,Co=1e-9,stations=[(1e6,0.3,0.5,1000),(1.009e6,0.3,0.5,400)])),
('lw two 9k strong lowQ',dict(**LW,Q=20,**G,R=10e3,Co=1e-9,stations=[(200e3,0.3,0.5,1000),(209e3,0.3,0.5,400)])),
('mw two 9k unequal',dict(**MW,Q=150,**G,R=47e3,Co=470e-12,stations=[(1e6,0.05,0.3,1000),(0.991e6,0.15,0.8,400)])),
('mw two 20k',dict(**MW,Q=150,**G,R=47e3,Co=470e-12,stations=[(1e6,0.05,0.3,1000),(1.02e6,0.05,0.3,400)])),
('mw two 10k deep',dict(**MW,Q=80,Is=1e-6,n=1.2,R=4e3,Co=2e-9,stations=[(1e6,0.1,0.9,1000),(1.010e6,0.05,0.9,700)])),
('mw off tune two',dict(**MW,Q=150,**G,R=22e3,Co=470e-12,off=0.03,stations=[(1e6,0.1,0.3,1000),(0.99e6,0.1,0.3,400)])),
('lw two 9k equal Q120 strong',dict(**LW,Q=120,**G,R=47e3,Co=470e-12,stations=[(200e3,0.2,0.5,1000),(209e3,0.2,0.5,400)])),
('lw two 9k Co=220p',dict(**LW,Q=120,**G,R=47e3,Co=220e-12,stations=[(200e3,0.1,0.5,1000),(209e3,0.1,0.5,400)])),
]
out=dict(
  description='Receiver circuits beyond the ordinary: loaded Q down to 2, strong and fully modulated stations, two stations, silicon and low-resistance diodes. Circuit and waveform as in detector-transient.json.',
  source='Computed with rfstep.c (exact exponential step, linear interpolation of source and diode current) at 256 and 512 steps a cycle and extrapolated to none, second order: v512 + (v512 - v256)/3',
  provenance='computed by reference/generators/am_transient_hard.py (python3, numpy, scipy, gcc); own error below 1e-5 relative',
  Rin_definition='mean(v_tank^2)/mean(v_tank*i_diode)',
  cases=[case(name,**kw) for name,kw in C])
json.dump(out,sys.stdout,indent=1)

/** @OnlyCurrentDoc */
/*!
Plank Ledger. Copyright (c) 2026 the Plank Ledger authors. MIT License.

Contains parts of mathjs 15.2.0 (Apache-2.0), bundled and minified:

math.js
https://github.com/josdejong/mathjs

Copyright (C) 2013-2026 Jos de Jong <wjosdejong@gmail.com>

Licensed under the Apache License, Version 2.0 (the "License");
you may not use this file except in compliance with the License.
You may obtain a copy of the License at

   https://www.apache.org/licenses/LICENSE-2.0

Unless required by applicable law or agreed to in writing, software
distributed under the License is distributed on an "AS IS" BASIS,
WITHOUT WARRANTIES OR CONDITIONS OF ANY KIND, either express or implied.
See the License for the specific language governing permissions and
limitations under the License.
*/
"use strict";var __plankLedger=(()=>{var e="",t=Math.max,n=Math.min,r=Math.abs,l=Math.ceil,o=Math.floor,i=Map,a=Int32Array,u="plank",s="room",f="left",h="right",p="us",c=String,g=Number,d="string",m=
"whole",w="number",k="piece",y=Float64Array,x=Math.round,$=Set,v="none",b=".",L="-",E=", ",S="middle",M="proved fewest",j="step limit",I="leads",A=" ",_=",",P="taper",T="date",O="length",C=
RangeError,R="start",N="minimum stagger",z="far",F="object",W=Math.imul,D=Number.isFinite,q="blank",K=Array.isArray,B="rip",G="both",V="not a number",H="two readings",U="metric",J="negative",Z=
"expansionGap",X="kerf",Q="choice",Y="takes",ee="wall",et="runs",en="crosscut",er="text",el=Object,eo="error value",ei="minimum piece",ea="width",eu=Date,es="not finite",ef="markingStep",eh="best",
ep="tongue",ec="count",eg="too large",ed="row",em=JSON.stringify,ew="gives",ek=Uint8Array,ey=Math.PI,ex=Math.cos,e$="low",ev=Math.sqrt,eb="end",eL=Object.fromEntries,eE="corner",eS="problem",eM=
Array,ej="first_pieces",eI="space missing",eA=Number.isSafeInteger,e_="inches",eP="not a length",eT="minRip",eO="play",eC="marking step",eR="layDirection",eN="groove",ez="not a percentage",eF=
Number.isInteger,eW="follows",eD="pair",eq="back",eK="found",eB=Math.sin,eG="all rows full",eV="high",eH="cut from",eU="plank side",eJ="tick",eZ="vapor barrier",eX="percent",eQ="millimetres",eY=
"expansion gap",e0="minStagger",e1="trimCover",e2="aligned-joint distance",e3="direction",e4="lay direction",e6="first row",e5="gap by span",e8="not an area",e9=Object.entries,e7="laid alike",te=
"play everywhere",tt=Math.atan2,tn="under the minimum rip",tr="plank_width",tl="This room",to="as it is",ti="Spreadsheet check",ta="does not close",tu="products",ts="planksPerBox",tf=
"Planks in a box",th="in_hand",tp="lengths",tc="one row, ripped",tg="formula",td="Sidebar";var tm=el.defineProperty,tw=el.getOwnPropertyDescriptor,tk=el.getOwnPropertyNames,ty=
el.prototype.hasOwnProperty,tx={},t$={PLANK_AREA:()=>uC,PLANK_BOXES:()=>uN,PLANK_COMPARE:()=>uK,PLANK_COUNT:()=>us,PLANK_CUTS:()=>uf,PLANK_EMC:()=>sO,PLANK_FIT:()=>sd,PLANK_LAST_RIPS:()=>sZ,
PLANK_LAST_ROW:()=>sq,PLANK_LENGTH:()=>aX,PLANK_LENGTH_TEXT:()=>aQ,PLANK_MOVEMENT:()=>sT,PLANK_OFFCUTS:()=>uu,PLANK_ONWARD:()=>ss,PLANK_ROOM_AREA:()=>uR,PLANK_ROWS:()=>sK,PLANK_STAGGER:()=>sB,
PLANK_TRIM:()=>sP,PLANK_UNDERLAY:()=>s_,checkSpreadsheet:()=>fa,fillTab:()=>fg,onInstall:()=>fo,onOpen:()=>fl,openLedger:()=>fi,putOnTopOfTab:()=>fp,readTabCells:()=>ff,renameTab:()=>fc,
showLargeView:()=>fy,showTab:()=>fw,spreadsheetLocale:()=>fs,startUnits:()=>fu,tabsOfOurs:()=>fh,tryCalls:()=>uI,tryInCell:()=>u_};for(var tv in t$)tm(tx,tv,{get:t$[tv],enumerable:!0});function tb(
e){return"[object Date]"===el.prototype.toString.call(e)}function tL(e){return e<0?-x(-e):x(e)}function tE(e){return tL(46875*e)}function tS(e){return e/46875}function tM(e){return tL(e/
46875)}function tj(e){return tL(16256*e)}function tI(e){return tL(640*e)}function tA(e){return e/16256}function t_(e){return e/640}function tP(e,t){return o(e/t)*t}var tT={"\xbc":"1/4","\xbd":"1/2",
"\xbe":"3/4","\u2150":"1/7","\u2151":"1/9","\u2152":"1/10","\u2153":"1/3","\u2154":"2/3","\u2155":"1/5","\u2156":"2/5","\u2157":"3/5","\u2158":"4/5","\u2159":"1/6","\u215A":"5/6","\u215B":"1/8",
"\u215C":"3/8","\u215D":"5/8","\u215E":"7/8"},tO="(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\\b",tC=RegExp(`^\\d{1,4}([-/.])\\d{1,2}\\1\\d{1,4}(?\
:$|[ t]\\d)|^\\d{1,2}[-/. ]{1,2}${tO}|^${tO}[-/. ]{1,2}\\d`),tR=/^(\d+)[- ](\d+) ?\x2f ?(\d+)(?![\d\x2f.,])/,tN=/^(\d+) ?\x2f ?(\d+)(?![\d\x2f.,])/,tz=
/^\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?= ?(?:mm\b|millim))/,tF=/^(?:\d(?:[\d.,]*\d)?|[.,]\d+)/,tW=/[\u0000-\u0008\u000e-\u001f\u007f\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff]/g;function tD(t){
return t.toLowerCase().replace(tW,e).replace(/[\u2010\u2011\u2012\u2013\u2014\u2015\u2212\ufe63\uff0d]/g,L).replace(/[\u2032\u2019\u2018\u02b9\u02bc\u201b\x60\xb4\uff07]/g,"'").replace(
/[\u2033\u201d\u201c\u02ba\u201f\u3003\uff02]|''/g,'"').replace(/[\u2044\u2215]/g,"/").replace(/(-?)([\xbc\xbd\xbe\u2150-\u215e])/g,(e,t,n)=>(t||A)+tT[n]).replace(/\xb2/g,"2").replace(
/[\s\u200b\u2060]+/g,A).trim()}function tq(e){return tC.test(e)}function tK(t){var n,r,l,o,i,a;let u,s,f=tR.exec(t);if(f)return tU((n=g(f[1]),(r=g(f[2]))<(l=g(f[3]))?tJ(n*l+r,l):V),t,f[0]);let h=
tN.exec(t);if(h)return tU((o=g(h[1]),i=g(h[2]),o>=10&&o>i&&i>1?eI:tJ(o,i)),t,h[0]);let p=tz.exec(t);if(p)return tU(tX(p[0].replace(/ /g,e).replace(_,b)),t,p[0]);let c=tF.exec(t);return c?tU((u=(a=c[
0]).split(b).length-1,s=a.split(_).length-1,u>0&&s>0?tZ(a,a.lastIndexOf(b)>a.lastIndexOf(_)?b:_):u>1?tZ(a,_):s>1?tZ(a,b):/^[1-9]\d{0,2},\d{3}$/.test(a)?H:tX(a.replace(_,b))),t,c[0]):V}function tB(t){
let[n,r]=t.toExponential(14).split("e"),l=g(r),o=n.replace(b,e).replace(/0+$/,e)||"0",i=o.length-1-l;return i<=0?{n:g(o)*10**-i,d:1}:i>22?{n:0,d:1}:{n:g(o),d:10**i}}function tG(t){if(w==
typeof t)return t;let n=tK(tD(t));return d==typeof n||e!==n.rest.trim()?null:tV(n.value)}function tV(e){return e.n/e.d}function tH(t,n){let l=10**n,{n:i,d:a}=tB(r(t)),u=x(i*l/a),s=c(o(u/l)),f=n>0?c(
u%l).padStart(n,"0").replace(/0+$/,e):e,h=e===f?s:`${s}.${f}`;return t<0&&u>0?`-${h}`:h}function tU(e,t,n){return d==typeof e?e:{value:e,rest:t.slice(n.length)}}function tJ(e,t){return t>0&&eA(e)&&
eA(t)?{n:e,d:t}:V}function tZ(t,n){let[r,l,o]=t.split(n),i=b===n?_:b,a=r.split(i),u=/^\d{1,3}$/.test(a[0])&&a.slice(1).every(e=>/^\d{3}$/.test(e));return void 0!==o||!u||(null!=l?l:e).includes(i)?V:
tX(`${a.join(e)}.${null!=l?l:e}`)}function tX(t){let[n,r=e]=t.split(b),l=r.replace(/0+$/,e).slice(0,15),o=g(n+l);return o<=1e300?{n:o,d:10**l.length}:V}function tQ(e){return e.charAt(0).toUpperCase(
)+e.slice(1)}var tY=[["vapour film",eZ],["film",eZ],["bars","transitions"],["bar","transition"]],t0=[["moulding","molding"],["mitre","miter"],["neighbour","neighbor"],["acclimatise","acclimate"],[
"bevelled","beveled"],["grey","gray"],["spoilt","spoiled"],["metre","meter"],["per cent",eX]],t1=new i([...tY,...t0]),t2=e=>e.map(([e])=>e).join("|"),t3=RegExp(`\\b(?:${t2(tY)})\\b|${t2(t0)}`,
"gi");function t4(e,t){return p!==t?e:e.replace(t3,e=>{var t;let n=null!=(t=t1.get(e.toLowerCase()))?t:e;return e===tQ(e)?tQ(n):n})}var t6=new i([["meter",1e3],["decameter",1e4],["hectometer",1e5],[
"kilometer",1e6],["decimeter",100],["centimeter",10],["millimeter",1],["inch",25.4],["foot",304.8],["yard",914.4],["mile",1609344],["link",201.168],["rod",5029.2],["chain",20116.8],["angstrom",1e-7],
["m",1e3],["dam",1e4],["hm",1e5],["km",1e6],["dm",100],["cm",10],["mm",1],["in",25.4],["ft",304.8],["yd",914.4],["mi",1609344],["li",201.168],["rd",5029.21],["ch",20116.8],["mil",.0254],["meters",
1e3],["decameters",1e4],["hectometers",1e5],["kilometers",1e6],["decimeters",100],["centimeters",10],["millimeters",1],[e_,25.4],["feet",304.8],["yards",914.4],["miles",1609344],["links",201.168],[
"rods",5029.2],["chains",20116.8],["angstroms",1e-7]]),t5=new i([["sqin",645.16],["sqft",92903.04000000001],["sqyd",836127.36],["sqmi",0x25b07524000],["sqrd",25292950.000000004],["sqch",0x181f09c4],[
"sqmil",64516e-8],["acre",4046860000.0000005],["hectare",1e10],["acres",4046860000.0000005],["hectares",1e10],["sqfeet",92903.04000000001],["sqyard",836127.36],["sqmile",0x25b07524000],["sqmiles",
0x25b07524000]]),t8={words:" ' ft foot feet ",ticks:195072,qe:p},t9={words:' " in inch inches ',ticks:16256,qe:p},t7={words:" m metre metres meter meters ",ticks:64e4,qe:U},ne={words:
" mm millimetre millimetres millimeter millimeters ",ticks:640,qe:U},nt=[t8,t9,t7,ne,{words:" cm centimetre centimetres centimeter centimeters ",ticks:6400,qe:U},{words:" yd yds yard yards ",ticks:
585216,qe:p}];function nn(e,t,n){let r=nr(e,t,n);return r.ok?r.Jn.n<0?na(J):{ok:!0,kt:tE(tV(r.Jn))}:r}function nr(t,n,l){var o,i;let a=p===l?s===n?t8:t9:s===n?t7:ne;if(w==typeof t){let e;return D(t)?
nu(t<0,(i=r(t),tV(e=tB(i))!==i?{n:i*a.ticks,d:1}:{n:e.n*a.ticks,d:e.d})):na(es)}let u=tD(t);if(e===u)return na(q);if(u.startsWith("#"))return na(eo);if(tq(u))return na(T);let f=u.replace(/^[-+] ?/,
e),h=(t=>{var n;let r=[],l=t;for(;e!==l;){let t=tK(l);if(H===t)return H;if(eI===t)return eI;if(V===t)return eP;let o=/^ ?('|"|[a-z]+)?\.?/.exec(t.rest);r.push({value:t.value,mr:null!=(n=o[1])?n:e}),
l=t.rest.slice(o[0].length).trim(),ns(o[1])===t8&&(l=l.replace(/^- ?(?=.)/,e))}return r})(f.replace(/^(\d+) ?- ?(\d+ \d+ ?\x2f ?\d+) ?(?:"|in\.?)?$/,"$1' $2\"").replace(
/(\d) ?(?:"|in(?:ch(?:es)?)?\.?) ?-? ?(\d+ ?\x2f ?\d+) ?(?:"|in\.?)?$/,'$1 $2"')),c=d==typeof h?h:((t,n)=>{let r=0,l;for(let[o,i]of t.entries()){let a=o===t.length-1,u=e===i.mr?((e,t,n)=>{if(
t)return void 0===e?n:e===t8?t9:void 0})(l,a,n):ns(i.mr);if(void 0===u||l&&(u.qe!==l.qe||u.ticks>=l.ticks))break;let s=i.value.n*u.ticks;if(l&&s>=l.ticks*i.value.d)return"part too big";if(a)return{n:
r*i.value.d+s,d:i.value.d};if(1!==i.value.d)break;r+=s,l=u}return eP})(h,a),m=eP===c&&null!=(o=(e=>{let t,n=/^((?:\d+\.?\d*|\.\d+)(?:e[-+]?\d{1,3})?) ?([a-z]+)\.?$/.exec(e);if(!n)return;let r=(t=n[
2],t6.get(t));return void 0===r?"unknown unit":{n:tL(g(n[1])*r*640),d:1}})(f))?o:c;return d==typeof m?na(m):nu(u.startsWith(L),m)}function nl(e,t){return p===t?s===e?"feet":e_:s===e?"metres":
eQ}function no(t,n,l){let i,a,u=x(r(t)/(p===n?1016:640)),f=t<0&&u>0?L:e;return p===n?f+(s===l?(i=o(u/192),a=nf(u-192*i),i>0?`${i}' ${a}`:a):nf(u)):f+(s===l?`${tH(u/1e3,3)} m`:`${u} mm`)}function ni(
e){return t=>no(t,e,k)}function na(e){return{ok:!1,Be:e}}function nu(e,t){return 64e6>=tV(t)?{ok:!0,Jn:e&&t.n>0?{n:-t.n,d:t.d}:t}:na("too long")}function ns(e){return e?nt.find(t=>t.words.includes(
` ${e} `)):void 0}function nf(e){let t=o(e/16),n=e-16*t,r=16;if(0===n)return`${t}"`;for(;n%2==0;)n/=2,r/=2;return t>0?`${t} ${n}/${r}"`:`${n}/${r}"`}function nh(e){return e[e.length-1]}function np(e,
t){return e[(t+1)%e.length]}function nc(e,t){return e[(t+e.length-1)%e.length]}function ng(e,t){let n=0;for(let r=0;r<e.length;r++)n+=t(e[r],r);return n}function nd(e){return ng(e,e=>e)}function nm(
e,t){return e.reduce((e,n)=>t(n)<t(e)?n:e)}function nw(e,t){let n=[];for(let r=0;r+1<=e;r++)n.push(t(r));return n}function nk(e){return[...new $(e)]}function ny(t){return e!==t}function nx(e,t,n=`${
t}s`){return`${e} ${1===e?t:n}`}var n$={length:(e,t,n,r,l)=>{var o,i;let a,u;return nE[n](e,nv(t),(o=r,i=l,a=s===r?"feet and inches such as 12' 6\"":'inches such as 7 1/2"',u=s===r?
"metres such as 3.81 m":"millimetres such as 190 mm",p===l?`${a}, or ${t4(u,l)}`:`${u}, or ${a}`),nl(r,l))},pr:e=>`${e} is 0. Type a length greater than 0.`,area:(e,t,n,r)=>nS[n](e,nv(t),p===r?
"square feet such as 132, or 12.3 m2":"square metres such as 12.3, or 132 sq ft"),ho:e=>`${e} is 0. Type an area greater than 0.`,Kn:(e,t,n)=>nM[n](e,nv(t)),go:(e,t)=>`${
e}: the area takes more than ${t} boxes of that coverage. Check the area that one box covers.`,count:(e,t)=>`${e}: ${nv(t)} is not a count. Type a whole number,\
 0 or more.`,number:(e,t)=>`${e}: ${nv(t)} is not a number. Type a number, 0 or more.`,bo:(e,t)=>`${e}: ${nv(t)} is more than a billion. Check what was typed.`,price:(e,t)=>`${e}: ${nv(
t)} is not an amount of money. Type it such as 74.50.`,date:(e,t)=>`${e}: ${nv(t)} is not a date. Type year, month and day such as 2026-12-05.`,species(t,n,r){let l=
"Type a species such as white oak, red oak or sugar maple, or its coefficient such as 0.0037.";return e===n?`${t} is blank. ${l}`:r.length>0?`${t}: ${nv(n)} may be ${r.join(
E)}. Type one of them in full.`:`${t}: ${nv(n)} has no coefficient here. ${l}`},wo:(e,t)=>`${e}: ${nv(t)} is not a coefficient of wood. Type one between 0 and 0\
.02 per point of moisture, such as 0.0037.`,ko:(e,t,n,r)=>`${e}: ${nv(t)} is outside ${n} to ${r} per cent, where the published coefficients hold. Type a moistu\
re content in that range.`,temperature:(e,t,n)=>`${e}: ${nv(t)} is outside the published table. Type ${p===n?"30 to 270 degrees Fahrenheit":"-1 to 132 degrees Celsius"}.`,xo:(e,t)=>`${e}: ${
t} is more than half of the roll. Type a smaller overlap.`,degrees:(t,n)=>`${t}${e===n?" is blank":`: ${nv(n)} is not a temperature`}. Type degrees such as 70.`,To:(e,t,n)=>`${e}: this makes about ${
t} pieces. At most ${n} are planned at once; check the unit of the stick's length.`,yr:e=>`${e} is blank between filled rows. Type a length in every row; a merg\
ed cell holds its value in its first row only.`,Po:(e,t,n)=>`${e}: this makes about ${t} joints. At most ${n} are compared at once; check the units of plank_len\
gth and run, or give fewer rows.`,So:e=>`Row ${e} is blank, so this row cannot be judged.`,Ro:(e,t,n)=>`${e}: the floor would take about ${t} strips. At most ${
n} are laid out; check the roll's width and length.`,Rn:(e,t)=>`${e}: ${t}`,Oo:e=>`products: the range has ${e}. Give three to five columns: name, plank length,\
 plank width, planks in a box, price of a box.`,Mo:(e,t)=>`products: the range has ${e} products. At most ${t} are compared at once; give fewer rows.`,units:e=>`units: ${nv(
e)} is not a system of units. Type us (feet and inches) or metric.`,Ao:(e,t)=>`${e}: ${nv(t)} is neither yes nor no. Type yes or no.`,Eo:(e,t,n,r)=>`${e} has ${t}, but ${n} has ${
r}. Give ranges of the same size, or single cells.`,Lo:(e,t)=>`${e}: the range has ${t}, but one value is wanted. Give a single cell.`,xt:(e,t)=>`${e}: the range has ${
t}. Give a single column, or a single row, of cells.`,On:e=>`${e} is blank. Give at least one row.`,jn:(e,t,n)=>`${e} has ${t} rows. At most ${n} are planned at\
 once; split the floor into rooms.`,Fo:e=>`rules: the range has ${e}. Give two columns, the name of a rule and its value, such as kerf and 1/8".`,Io:(e,t,n)=>`${e}: ${nv(
t)} is not a rule. The rules are ${n.join(E)}.`,$o:e=>`${e}: there is a value beside a blank name. Type the name of the rule it is for.`,Co:(e,t)=>`${e}: ${t} i\
s given a second time. Give each rule once.`,markingStep:(e,t,n)=>`${e}: ${nv(t)} cannot be used as a marking step. Type a length from 0.25 mm to 1 in, such as ${p===n?'1/16"':"1 mm"}.`,layDirection:
(e,t)=>`${e}: ${nv(t)} is not a lay direction. Type length, width, shared, a wall such as wall 3, or degrees such as 45.`,_o:e=>`walls: the range has ${e}. Give\
 two columns: the length of each wall, and the turn at its end (R, L, or degrees to the right).`,turn:(e,t)=>`${e}: ${nv(t)} is not a turn. ${nb}`,on:(t,n,r)=>e===c(n).trim()?`${
t} is blank. Type the number of the ${r}, counted from 1.`:`${t}: ${nv(n)} is not a ${r}. Type its number, counted from 1.`,hr:e=>`${e} is 0. Type how many plan\
ks a box holds, or leave it blank.`,gr:(e,t,n)=>`${e}: ${nv(t)} is under 10 mm (3/8 in). ${nj(nl(u,n))}`,br:(t,n,r)=>{var l;let o=p===r?[t4(eQ,r),"mm",U]:[e_,"in",p],i=w==typeof(l=n)||
/^\s*[\d.,]+\s*$/.test(n)?`; for ${o[0]} type ${c(n).trim()} ${o[1]}, or set the units to ${o[2]}`:e;return`${t}: ${nv(n)} is more than any plank has: at most 8\
 m (26 ft) long and 1 m (39 in) wide. A bare number here is in ${nl(u,r)}${i}.`},wr:(e,t,n,r)=>`${e}: ${nv(t)} is more than any floor has, at most ${n}. A bare number here is in ${nl(u,
r)}. Type it with its unit, such as ${p===r?"10 mm":'3/8"'}.`,No:(e,t,n)=>`${e}: ${nv(t)} is deeper than any wall, at most 2 m (6.5 ft). Type how far the floor \
runs in from the face of the wall; a bare number here is in ${nl(s,n)}.`,vo:(e,t,n)=>`${e}: ${nv(t)} is more than ${n} spare planks. Type how many whole planks \
to buy on top.`,Bo:(e,t,n)=>`${e}: ${nv(t)} by ${nv(n)} feet is larger than a sports hall. If inches are meant, type ${nv(t)}" by ${nv(n)}"; if feet, type them \
with the foot mark, ${nv(t)}' by ${nv(n)}'.`,Uo:(e,t)=>`The ranges have ${e} cells to answer. At most ${t} are answered in one call; give the range in parts.`,kr:(e,t,n)=>`${e}: this makes about ${
t} rows. At most ${n} are planned in one call; give fewer.`,Do:()=>"products: the first column holds lengths. Give the name first, then plank length and plank w\
idth.",xr:(e,t,n)=>`${e} would take about ${t} planks. At most ${n} are planned at once; check the units, or split the floor into rooms.`,Tr:(e,t,n)=>`${e}: ${nv(t)} makes more than ${
n} steps in a plank. Type a step that a pencil can mark, such as 1/16" or 1 mm.`,Wo:(e,t)=>`${e}: no row would be even one marking step, ${t}, wide. Type a smal\
ler step, or check the first row and the sizes of plank and room.`,Go:(e,t)=>`${e}: a gap of ${t} at every wall leaves no floor to lay. Type a smaller gap, or c\
heck the room.`,Jo:(e,t,n)=>`${e}: there is no wall ${t}: the room has ${n}. Type a number from 1 to ${n}.`,Ko:(e,t,n)=>`${e}: this room would take ${t} rows. At most ${
n} are planned at once; check the units of plank and room.`,jo:(e,t,n)=>`${e}: a first piece of ${t} is longer than a plank of ${n}. Type the length it is cut to.`,Vo:(e,t,n)=>`${
e}: a first piece of ${t} is longer than the run of ${n}. Type the length it is cut to.`,Pr:(e,t,n)=>`${e}: with a gap of ${t} at both walls nothing of ${n} is \
left to lay. Type a smaller gap, or check the depth.`,Ho:(e,t,n)=>`${e}: a plank of ${t} is wider than the ${n} to be laid, so there is no full row, only one ro\
w ripped to fit.`,qo:(e,t)=>`No plan meets all the rules. The nearest takes ${t} planks. ${e} Change the rule, the plank length or the run.`,Tt:(e,t,n,r)=>`${e}: ${n} is less than the ${t} of ${r}.`,
Yo:(e,t)=>`The ${e} is not kept in ${nx(t,"more place")}.`,zo:()=>"Rows side by side of two planks or more can keep half a plank at most: the joints of a row ar\
e a plank apart.",Mn:(e,t)=>t>0?`${e} (and ${t} more)`:e};function nv(e){return w==typeof e?1e15>r(e)?tH(e,6):"a number of that size":e.length>40?`"${e.slice(0,37)}..."`:`"${e}"`}var nb=
"Type R or L, or degrees: right positive, left negative.",nL="Type 10%, 10 or 0.1 for 10 %.",nE={blank:(e,t,n)=>`${e} is blank. Type ${n}.`,date:e=>`${e} is a d\
ate: the spreadsheet turns 5/8 into one. Type 5/8" with the inch mark, or 0.625, and clear the date format.`,"error value":(e,t)=>`${e}: the cell holds the error ${t}. Fix that cell first.`,
"not finite":(e,t,n)=>`${e} is not a finite number. Type ${n}.`,"not a length":(e,t,n)=>`${e}: ${t} is not a length. Type ${n}.`,"space missing":(e,t)=>`${e}: ${
t} can be read in two ways. Type 7 1/2 with a space between inches and fraction, or 35.5.`,"two readings":(e,t)=>`${e}: ${t} can be read in two ways. Type 1234 \
or 1.234: no comma before three digits.`,"part too big":(e,t)=>`${e}: ${t} has too many of the smaller unit. Type fewer than 12 inches after feet, or inches alo\
ne.`,"unknown unit":(e,t,n)=>`${e}: ${t} has a unit that is not one of length. Type ${n}.`,negative:(e,t)=>`${e}: ${t} is negative. Type a length of 0 or more.`,"too long":(e,t,n,r)=>`${e}: ${
t} is longer than 100 m (328 ft). ${nj(r)}`},nS={blank:nE.blank,date:e=>`${e} is a date. Type the area as a number, and clear the date format.`,"error value":nE[eo],"not finite":nE[es],"not an area":
(e,t,n)=>`${e}: ${t} is not an area. Type ${n}.`,"two readings":nE[H],negative:(e,t)=>`${e}: ${t} is negative. Type an area of 0 or more.`,"too large":(e,t)=>`${e}: ${
t} is more than 10,000 m2 (107,639 sq ft). Check the unit.`},nM={blank:e=>`${e} is blank. Type a percentage such as 10%.`,date:e=>`${e} is a date. Type a percen\
tage such as 10%, and clear the date format.`,"error value":nS[eo],"not finite":e=>`${e} is not a finite number. Type a percentage such as 10%.`,"not a percentage":(e,t)=>`${e}: ${
t} is not a percentage. ${nL}`,negative:(e,t)=>`${e}: ${t} is negative. Type a percentage of 0 or more.`,"too large":(e,t)=>`${e}: ${t} is more than 100 %. ${nL}`,"one or all":e=>`${
e}: 1 can be read in two ways, and a cell that shows 100% holds 1. Type 100 for 100 per cent, or 0.01 for 1 per cent.`,factor:(e,t)=>`${e}: ${t} can be read in \
two ways. Type 10% if a factor of 1.1 is meant, or "1.1%" if 1.1 per cent is.`,"all of it":(e,t)=>`${e}: ${t} is not below 100 %. ${nL}`};function nj(e){
return`Check the unit: a bare number here is in ${e}.`}function nI(e,t,n,r){let[l,o]=[tG(t),tG(n)];return p!==r||null===l||null===o||l*o*0x8dc240000<=28539813888e4?null:n$.Bo(e,l,o)}var nA=(e,t)=>[
tj(e),tI(t)],n_=[{key:Z,label:"Expansion gap",use:u,blank:nA(3/8,10),most:tj(3),inRange:eY},{key:e0,label:"Minimum stagger",use:u,blank:nA(8,200),inRange:N},{key:"minPiece",label:"Minimum piece",use:
u,blank:nA(8,200),inRange:ei},{key:eT,label:"Minimum rip",use:u,blank:nA(2,50),inRange:"minimum rip"},{key:"squareCut",label:"Square-cut tolerance",use:u,blank:nA(3/16,5),most:tj(1)},{key:e1,label:
"Trim covers",use:u,blank:nA(.75,20)},{key:"leastStrip",label:"Least strip",use:u,blank:nA(.75,20)},{key:X,label:"Kerf",use:u,blank:nA(1/8,3),most:tI(12.7),inRange:X},{key:eO,label:"Play",use:u,
blank:nA(.25,6),inRange:eO},{key:"alignedDistance",label:"Aligned-joint distance",use:u,blank:nA(2,50),inRange:e2},{key:ef,label:"Marking step",use:"step",blank:nA(1/16,1),inRange:eC},{key:eR,label:
"Lay direction",use:e3,choices:[[e,"along the length"],[ea,"along the width"],["shared","along the length, taper shared by both walls"],[eh,"whichever way is best"]],own:{words:
"along a wall, or at an angle",label:"Wall or degrees"},inRange:e4},{key:"startSide",label:"First row lies",use:Q,choices:[[e,"at the near side"],["near",e],[z,"at the far side"],[S,
"in the middle, rows both ways"],[eh,"wherever is best"]]},{key:"firstRow",label:"First row width",use:e6,choices:[[e,"a full plank, unless the last is a sliver\
"],[eh,"whichever width is best"]],own:{words:"ripped to a width of my own",label:"My own width"}},{key:"startEdge",label:"Edge at the start wall",use:Q,choices:[[e,"the tongue"],[ep,e],[eN,
"the groove"]]},{key:"reuseStrips",label:"Strips of the first row in the last",use:Q,choices:[[e,"goes into the last row where it fits"],["yes",e],["no","is waste"]]},{key:"aim",label:"Plan for",use:
Q,choices:[[e,"the fewest planks"],["easy","the easiest laying, in the boxes bought"]]},{key:"spare",label:"Spare planks",use:ec,blank:0,most:1e4,inRange:"spare"},{key:"longestAlong",label:
"Longest floor along the rows",use:s},{key:"longestAcross",label:"Longest floor across the rows",use:s},{key:"gapBySpan",label:"Gap by span",use:e5}];function nP(e,t){let{blank:n}=n_.filter(t=>
t.key===e)[0];return n[+(p!==t)]}tI(12e3),tI(8e3),tj(300),tj(300),tj(300),tj(1020),tj(1020),[["rectangle","Length and width"],["four walls","Four walls and a diagonal"],["walls in order",
"Walls in order, with turns"],["rectangles","Rectangles added and taken away"]].map(([e])=>e);var nT=[{pattern:/^(?:(?:sq|square) ?(?:ft|foot|feet)|(?:ft|foot|feet) ?2|sf)$/,unit:0x8dc240000},{
pattern:/^(?:(?:sq|square) ?(?:m|met(?:re|er)s?)|(?:m|met(?:re|er)s?) ?2)$/,unit:4096e8},{pattern:/^(?:(?:sq|square) ?(?:yds?|yards?)|(?:yds?|yards?) ?2|sy)$/,unit:0x4fbd440000},{pattern:
/^(?:(?:sq|square) ?(?:in|inch|inches)|(?:in|inch|inches) ?2)$/,unit:0xfc04000},{pattern:/^(?:(?:sq|square) ?cm|cm ?2)$/,unit:4096e4},{pattern:/^(?:(?:sq|square) ?mm|mm ?2)$/,unit:409600},{pattern:
/^acres?$/,unit:0x5e3924da00000}];function nO(e,t,n){let r=p===n?0x8dc240000:4096e8,{n:l,d:o}=e.count;return e.unit===r?l*t.n/(o*t.d):l*e.unit*t.n/(r*o*t.d)}function nC(e){return tV(e.count)*e.unit<=
4096e12?{ok:!0,area:e}:nR(eg)}function nR(e){return{ok:!1,Be:e}}function nN(e){return o(e/4)-o(e/100)+o(e/400)}function nz(t){let n,r,l,i=[],a=(e,t)=>{i.push({field:e,text:t})};return{units:t,sn:i,
ne:a,...(n=(e,n,r,l)=>{let o=nn(r,l,t);return o.ok?0===tM(o.kt)&&a(e,n$.pr(n)):a(e,n$.length(n,r,o.Be,l,t)),o.ok?o.kt:0},{length(e,n,r,l){let o,i=(o=nn(r,l,t)).ok?o.kt:(q!==o.Be&&a(e,n$.length(n,r,
o.Be,l,t)),null);return null===i?null:tM(i)},an:(e,t,r,l)=>tM(n(e,t,r,l)),Pt(e,r,l,o){let i=n(e,r,l,u),s=tM(i);return s>0&&s<6400&&a(e,n$.gr(r,l,t)),s>o&&a(e,n$.br(r,l,t)),i}}),...(r=(e,t,n,r=
n$.number,l=nD)=>{if(nF(n))return null;let o=l(n);return null===o?a(e,r(t,n)):o>1e9&&a(e,n$.bo(t,n)),o},l=(t,n,r)=>{let l,o,i;if(nF(r))return null;let u=(o=(l=d==typeof r?r.replace(/\s*%\s*$/,e):
r)!==r,null===(i=nD(l))?null:o||i>=1?i/100:i);return null!==u&&u<=1?u:(a(t,n$.Kn(n,r,null===u?ez:eg)),null)},{number:(e,t,n)=>r(e,t,n),count(e,t,n){let l=r(e,t,n,n$.count);return null!==l&&l<=1e9&&!
eF(l)&&a(e,n$.count(t,n)),l},fraction(e,t,n){let r=l(e,t,n);return 1===r&&a(e,n$.Kn(t,n,"all of it")),r},percent(e,t,n){let r=l(e,t,n);return null===r?null:x(1e8*r)/1e6},price:(e,t,n)=>r(e,t,n,
n$.price,nW),date:(e,t,n)=>r(e,t,n,n$.date,e=>(e=>{let t=/^\s*(\d{4})-(\d{1,2})-(\d{1,2})\s*$/.exec(e);if(!t)return null;let[n,r,l]=[g(t[1]),g(t[2]),g(t[3])];if(n<1||r<1||r>12||l<1||l>(2===r?nN(n)>
nN(n-1)?29:28:4===r||6===r||9===r||11===r?30:31))return null;let i=r>2?n:n-1,a=o(((r+9)%12*153+2)/5)+l-1;return 365*i+nN(i)+a-719468})(c(e)))})}}function nF(t){return d==typeof t&&e===tD(
t)}function nW(t){return nD(w==typeof t?t:t.trim().replace(/^[^\d\s.,-]{1,3}\s*|\s*[^\d\s.,]{1,3}$/g,e))}function nD(t){if(w==typeof t)return D(t)&&t>=0?t:null;let n=tK(tD(t));return d!=typeof n&&
e===n.rest?n.value.n/n.value.d:null}var nq=["words",Q,"area",e3,e6];function nK(t){let n=tD(c(t)).replace(/\s*(?:\xb0|deg|degrees)$/,e).trim();if("r"===n||h===n)return 90;if("l"===n||f===n)return-90;
let l=/^[+-]?\d+(?:[.,]\d+)?$/.test(n)?g(n.replace(_,b)):0/0;return 180>r(l)?l:null}function nB(e,t){return{plankLength:tM(e),plankWidth:tM(t),Vn:{length:e,width:t}}}function nG(e,t){return nk(e.map(
({rule:e})=>e)).flatMap(n=>{let r=nH(e.filter(e=>e.rule===n)),l=r.slice(0,3).map(t),o=r.length-l.length;return o>0?[...l,n$.Yo(n,o)]:l})}function nV(e,t){return e.some(({rule:e,wanted:n})=>N===e&&2*
n>t)?[n$.zo()]:[]}function nH(e){return[...e].sort((e,t)=>e.found-t.found)}function nU({f:e,u:t,P:n}){if(n.length>0)return"the nearest plan: no plan meets all t\
he rules";let r=e-t;return 0===r?"cannot be done with fewer":`at most ${r} more than the fewest`}function nJ(e,t){return{argument:e,says:t}}function nZ(e){return F==typeof e&&null!==e&&
"says"in e}function nX(t){return e===t||null==t||d==typeof t&&e===t.trim()}function nQ(t){return w==typeof t||d==typeof t?t:"boolean"==typeof t?t?"TRUE":"FALSE":tb(t)?"a date":e}function nY(t){
return w!=typeof t||D(t)?c(ru(t)).trim():e}function n0(e){var t;return t=n8(e),(e,n)=>{let r=t(e,n);return nZ(r)?r:tL(tV(r))}}function n1(e){return rf(n8(e))}function n2(e){return rf(re(e))}var n3=
n6(512e4),n4=n6(64e4);function n6(e){let t=n1(u);return(n,r)=>{let l=t(n,r);return nZ(l)?l:6400>tM(l)?{says:e=>n$.gr(e,nQ(n),r)}:tM(l)<=e?l:{says:e=>n$.br(e,nQ(n),r)}}}function n5(e){let t=n2(u),n=
n_.flatMap(t=>t.key===e&&"most"in t?[t.most]:[])[0];return(e,r)=>{let l=t(e,r);return nZ(l)||tM(l)<=n?l:{says:t=>n$.wr(t,nQ(e),no(n,r,k),r)}}}function n8(e){let t=re(e);return(e,n)=>{let r=t(e,n);
return nZ(r)||0!==tL(tV(r))?r:{says:n$.pr}}}function n9(e){return(t,n)=>{let r=e(t,n);return nZ(r)?r:{read:r,Oe:ru(t)}}}function n7(t,n,r){let l=nI(e,t.Oe,n.Oe,r);return null===l?null:nJ(O,e=>{var o;
return null!=(o=nI(e,t.Oe,n.Oe,r))?o:l})}function re(e){return(t,n)=>{let r=rs(t,e,n);return nZ(r)||r.n>=0?r:{says:r=>n$.length(r,nQ(t),J,e,n)}}}function rt(t,n){if(tb(t))return{says:t=>n$.area(t,e,
T,n)};let r=((t,n)=>{let r=p===n?0x8dc240000:4096e8;if(w==typeof t)return D(t)?t<0?nR(J):nC({count:tB(t),unit:r}):nR(es);let l=tD(t);if(e===l)return nR(q);if(l.startsWith("#"))return nR(eo);if(tq(
l))return nR(T);let o=tK(l.replace(/^[-+] ?/,e));if(H===o)return nR(H);if(d==typeof o)return nR(e8);let i=((t,n)=>{if(e===t)return n;let r=nT.find(e=>e.pattern.test(t));if(r)return r.unit;let l=
t5.get(t);return void 0===l?void 0:x(409600*l)})(o.rest.replace(/[.^]/g,e).trim(),r);return void 0===i?nR(e8):l.startsWith(L)&&o.value.n>0?nR(J):nC({count:o.value,unit:i})})(ru(t),n);return r.ok?
r.area.count.n>0?r.area:{says:n$.ho}:{says:e=>n$.area(e,nQ(t),r.Be,n)}}function rn(e){return rl(e,!1)}function rr(e){return rl(e,!0)}function rl(t,n){var r;let l,o=tb(t)?T:null!=(r=1===(l=w==
typeof t||d==typeof t?tG(t):null)?"one or all":n&&null!==l&&l>1&&l<2?"factor":void 0)?r:w==typeof t?D(t)?t<0?J:t>100?eg:rh(tB(t)):es:(t=>{let n=tD(c(t));if(e===n)return q;if(n.startsWith(
"#"))return eo;if(n.startsWith(L))return J;let r=tK(n);if(d==typeof r)return ez;let l=r.rest.trim();return"%"===l?rp(r.value):e===l?rh(r.value):ez})(ru(t));return d==typeof o?{says:e=>n$.Kn(e,nQ(t),
o)}:o.n>o.d?{says:e=>n$.Kn(e,nQ(t),eg)}:o}function ro(e){let t=d!=typeof e||nX(e)?e:g(tD(e));return w==typeof t&&eF(t)&&t>=0?t:{says:t=>n$.count(t,nQ(e))}}function ri(t){let n=d==typeof t?t.trim(
).toLowerCase():e;return p===n||U===n?n:{says:()=>n$.units(nQ(t))}}function ra(e){let t=c(nQ(e)).trim().toLowerCase();return"yes"===t||"no"===t?"yes"===t:{says:t=>n$.Ao(t,nQ(e))}}function ru(e){
return w==typeof e?e:c(nQ(e))}function rs(t,n,r){if(tb(t))return{says:t=>n$.length(t,e,T,n,r)};let l=nr(ru(t),n,r);return l.ok?l.Jn:{says:e=>n$.length(e,nQ(t),l.Be,n,r)}}function rf(e){return(t,n)=>{
let r=e(t,n);return nZ(r)?r:tE(tV(r))||0}}function rh(e){return e.n<e.d?e:rp(e)}function rp({n:e,d:t}){return{n:e,d:100*t}}function rc(t,n,r){let l=e9(t).map(([e,t])=>rb(e,t)),o=rb("units",{given:n,
read:ri,B:()=>p}),a=(e=>{let t=e.filter(e=>!e.Hn);if(0===t.length)return{rowCount:1,columnCount:1};let[n,...r]=t,l=r.find(({cells:e})=>e.length!==n.cells.length||e[0].length!==n.cells[0].length);if(
l)throw Error(n$.Eo(l.name,ry(l.cells),n.name,ry(n.cells)));return{rowCount:n.cells.length,columnCount:n.cells[0].length}})([...l,o]),u={columns:l,units:o,shape:a,Ot:{first:e,count:0},Mt:new i},s=
l.filter(e=>!e.Hn&&void 0===e.B),f=((e,t)=>{if(0===e.length)return t.rowCount;let n=t=>e.some(({cells:e})=>e[t].some(e=>!nX(e))),r=t.rowCount;for(;r>1&&!n(r-1);)r-=1;return r})(s,a);if(f*
a.columnCount>1e5)throw Error(n$.Uo(f*a.columnCount,1e5));let h=[];for(let t=0;t<f;t++){let n=[];for(let l=0;l<a.columnCount;l++){let o=s.length>0&&s.every(e=>nX(e.cells[t][l]));n.push(o?e:((t,n,r,
l)=>{var o;let i=rL(t,t.units,n,r,p);if(nZ(i))return e;let a={},u=!0;for(let e of t.columns){let l=rL(t,e,n,r,i);a[e.name]=l,nZ(l)&&(u=!1)}if(!u)return e;let s=l(a,i);return nZ(s)?(rv(t.Ot,s.says(rS(
null!=(o=s.argument)?o:t.columns[0].name,t.shape,n,r))),e):s})(u,t,l,r))}h.push(n)}return r$(u.Ot),h}function rg(e){return 1===e.length&&1===e[0].length?e[0][0]:e.map(e=>[...e])}function rd(e,t){for(
let[n,r]of[...e9(e),["units",{given:t}]]){let e=rk(r.given);if(e.length*e[0].length>1)throw Error(n$.Lo(n,ry(e)))}let[[n]]=rc(e,t,(e,t)=>({values:e,units:t}));return n}function rm(t,n,r,l){let o=rk(
n);if(o.length>1&&o[0].length>1)throw Error(n$.xt(t,ry(o)));let i=o.length>1?o.map(e=>e[0]):o[0],a={first:e,count:0},u=i.slice(0,rx(i,nX)).map((e,n)=>{if(nX(e))return null;let o=r(e,l);return nZ(o)?(
rv(a,o.says(i.length>1?`${t}, row ${n+1}`:t)),null):o});if(r$(a),0===u.length)throw Error(n$.On(t));return u}function rw(e,t,n,r){return rm(e,t,n,r).map((t,n)=>{if(null===t)throw Error(n$.yr(`${
e}, row ${n+1}`));return t})}function rk(t){if(!K(t))return[[t]];let n=t.map(e=>K(e)?e:[e]);return n.length>0&&n[0].length>0?n:[[e]]}function ry(e){return`${nx(e.length,ed)} and ${nx(e[0].length,
"column")}`}function rx(e,t){let n=e.length;for(;n>0&&t(e[n-1]);)n-=1;return n}function r$(e){if(e.count>0)throw Error(n$.Mn(e.first,e.count-1))}function rv(e,t){0===e.count&&(e.first=t),e.count+=
1}function rb(e,t){let n=rk(t.given),r=1===n.length&&1===n[0].length;return{name:e,cells:n,Hn:r,read:t.read,B:t.B}}function rL(e,t,n,r,l){if(!t.Hn)return rE(e,t,t.cells[n][r],l,n,r);let o=`${
t.name} ${l}`;return e.Mt.has(o)||e.Mt.set(o,rE(e,t,t.cells[0][0],l,n,r)),e.Mt.get(o)}function rE(t,n,r,l,o,i){let a=nX(r);if(a&&n.B)return n.B(l);let u=n.read(a?e:r,l);return nZ(u)&&rv(t.Ot,u.says(
rS(n.name,n.Hn?void 0:t.shape,o,i))),u}function rS(t,n,r,l){return void 0===n?t:t+(n.rowCount>1?`, row ${r+1}`:e)+(n.columnCount>1?`, column ${l+1}`:e)}function rM(e,t){let{plankLength:n,plankWidth:
r,kerf:l,minPiece:o,minStagger:i,alignedDistance:a,play:u=0}=e,s=e.rows.map(({room:e,width:t,runs:n})=>({room:e,width:t,runs:n.map(({x:e,length:t})=>({x:e,R:t}))})),f=t&&{before:t.before.map(({room:
e,joints:t,joints2:n})=>({room:e,joints:t,joints2:n})),stock:t.stock.map(({length:e,ends:t,width:n})=>({length:e,ends:t,width:n})),whole:t.whole};return em({instances:[{id:"to replay",L:n,W:r,k:l,m:
o,S:i,T:a,play:u,rows:s,twins:e.ripPairs,...f}]})}function rj({rowIndex:e,E:t,ze:n}){return`${rA(e,t)}, piece ${n+1}`}function rI(e,t,n){var r,l;return null!=(l=null==(r=e.rows[t])?void 0:r.runs[n])?
l:[]}function rA(e,t){return`row ${e+1}, run ${t+1}`}function r_(e,t){return e.from===t||m===e.from}function rP(e,t){return e.rowIndex===t.rowIndex&&e.E===t.E&&e.rule===t.rule&&e.found===t.found&&
e.wanted===t.wanted}function rT({rule:e,rowIndex:t,E:n,found:r,wanted:l}){return`${rA(t,n)}: ${e} ${r}, wanted ${l}`}function rO(e,t,n){var r,l;return(null!=(l=null==(r=e.rows[n])?void 0:r.runs)?l:[
]).flatMap((e,r)=>rC(e.x,rI(t,n,r).map(e=>e.length)))}function rC(e,t){let n=e;return t.slice(0,-1).map(e=>n+=e)}function rR(e){let t=new i;for(let n of e){let e=t.get(n.plank);e?e.push(n):t.set(
n.plank,[n])}return t}function rN(e){return[...e].sort((e,t)=>t.length-e.length)}var rz=[f,h,S,m];function rF(l,o){let i,a,u,s,p;if(!(o.rows.length===l.rows.length&&o.rows.every((e,t)=>{var n;
return e.runs.length===(null==(n=l.rows[t])?void 0:n.runs.length)})))return["the rows and runs of the plan are not those of the job"];let c=l.rows.flatMap((e,t)=>e.runs.flatMap((e,n)=>rI(o,t,n).map((
e,r,l)=>({...e,rowIndex:t,E:n,ze:r,qn:r===l.length-1}))));return[...l.rows.flatMap((e,t)=>e.runs.flatMap(({length:e},n)=>{let r=rA(t,n),i=rI(o,t,n),a=i.reduce((e,t)=>e+t.length,0);return[...a===e?[]:
[`${r}: pieces fill ${a} of ${e}`],...e>l.plankLength?((e,t)=>{let n=t[0],r=t[t.length-1];if(!n||!r||t.length<2)return[`${e}: ${t.length} pieces, longer than a plank`];let l=[];return r_(n,h)||
l.push(`${e}: the first piece is cut from ${n.from}, not right or whole`),r_(r,f)||l.push(`${e}: the last piece is cut from ${r.from}, not left or whole`),t.slice(1,-1).forEach((t,n)=>{m!==t.from&&
l.push(`${e}, piece ${n+2}: ${t.from} between the ends, not whole`)}),l})(r,i):1===i.length?[]:[`${r}: ${i.length} pieces where one plank reaches`]]})),...(p=l.plankLength,c.flatMap(e=>{let{length:t,
from:n,plank:r}=e,l=[];return(!rW(t,1)||t>p)&&l.push(`length ${t}, wanted 1 to ${p}`),rz.includes(n)||l.push(`kept end ${n}`),m===n!=(t===p)&&l.push(`${n} of length ${t}, plank ${p}`),rW(r,0)||
l.push(`plank index ${r}`),l.map(t=>`${rj(e)}: ${t}`)})),...[...rR(c.filter(e=>!e.$))].flatMap(([t,n])=>{var r;let o=`plank ${t+1}`,i=[];for(let e of[f,h]){let t=n.filter(t=>t.from===e).length;t>1&&
i.push(`${o}: ${t} pieces keep its ${e} end`)}n.length>1&&n.some(e=>m===e.from)&&i.push(`${o}: whole, and ${n.length-1} other pieces from it`);let a=n.reduce((e,t)=>e+t.length,0),u=(n.length-1)*
l.kerf,s=(null!=(r=l.play)?r:0)*n.slice(1).filter(e=>e.qn).length,p=a+u+s;if(p>l.plankLength){let t=s>0?` + play ${s}`:e;i.push(`${o}: pieces ${a} + kerfs ${u}${t} = ${p}, plank ${
l.plankLength}`)}return i}),...(i=rR(c.filter(e=>!e.$)),[...rR(c.filter(e=>e.$))].flatMap(([e,t])=>{var n;let r=rN(null!=(n=i.get(e))?n:[]);return rN(t).flatMap(t=>{var n;let o,i=(n=t.rowIndex,o=e=>{
var t,n;return null!=(n=null==(t=l.rows[e])?void 0:t.width)?n:1/0},l.ripPairs.filter(([e,t])=>t===n&&o(e)+o(t)+l.kerf<=l.plankWidth).map(([e])=>e));if(0===i.length)return[`${rj(
t)}: a strip in a row of no rip pair that fits the width`];let a=r.findIndex(e=>i.includes(e.rowIndex)&&r_(e,t.from)&&e.length>=t.length);return a>=0&&r.splice(a,1),a>=0?[]:[`${rj(
t)}: no piece of plank ${e+1} gives a ${t.from} of ${t.length}`]})})),...(u=(a=l.rows.flatMap((e,t)=>{var i;let a=(null==(i=l.rows[t-1])?void 0:i.room)===e.room?rO(l,o,t-1):[];return e.runs.flatMap((
e,i)=>{let u=rI(o,t,i).map(e=>e.length),s=n(...e.length>l.plankLength?[...u.slice(0,1),...u.slice(-1)]:[],l.minPiece),f=((e,t,l)=>{let o=l;for(let l of e)for(let e of t)o=n(o,r(l-e));return o})(rC(
e.x,u),a,l.minStagger);return[{rule:ei,rowIndex:t,E:i,found:s,wanted:l.minPiece},{rule:N,rowIndex:t,E:i,found:f,wanted:l.minStagger}].filter(({found:e,wanted:t})=>e<t)})})).filter(e=>!o.P.some(t=>rP(
t,e))),s=o.P.filter(e=>!a.some(t=>rP(e,t))),[...u.map(e=>`${rT(e)}, and the plan does not say so`),...s.map(e=>`${rT(e)} is declared, and is not what the plan d\
oes`)]),...(({f:e,u:n,re:r,s:l},o)=>{let i=new $(o.map(e=>e.plank)),a=o.reduce((e,n)=>t(e,n.plank),-1),u=[];return e!==i.size&&u.push(`plank count ${e}, planks used ${i.size}`),a>=i.size&&u.push(
`plank ${a+1} is used, and only ${i.size} planks are`),(!rW(n,0)||n>e)&&u.push(`bound ${n}, plank count ${e}`),rW(l,0)||u.push(`steps ${l}`),M!==r&&j!==r&&u.push(`stop: ${r}`),M===r&&n!==e&&u.push(
`proved fewest, with bound ${n} and plank count ${e}`),u})(o,c)]}function rW(e,t){return eF(e)&&e>=t}function rD(t,n){let[r,...l]=rF(t,n);if(void 0===r)return n;let o=0===l.length?e:` and ${
l.length} more ${1===l.length?"law":"laws"}`;throw Error(`Internal: the plan breaks a law: ${r}${o}. Please report it, with the job: ${rM(t)}`)}function rq(e,r,l=r.rows.map((e,t)=>t)){let o=[...((e,
t)=>{let n=new i,r=(e,t)=>{var r;let l=null!=(r=n.get(e.plank))?r:{own:[],i:[]};n.set(e.plank,l),(e.$?l.i:l.own).push(t)};for(let n of t)e.rows[n].runs.forEach((e,t)=>{e.forEach((e,l)=>{r(e,{
rowIndex:n,E:t,ze:l,length:e.length,from:e.from})})});return n})(r,l).entries()].sort(([e],[t])=>e-t).map(([r,l])=>((e,r,{own:l,i:o})=>{let a=((e,t,n)=>{let r=(e,t)=>t.length-e.length,l=[...t].sort(
r),o=new i;for(let t of[...n].sort(r)){let n=l.findIndex(n=>{let r,l,o;return r=e,l=t,o=n,r.ripPairs.some(([e,t])=>e===o.rowIndex&&t===l.rowIndex)&&(o.from===l.from||m===o.from)&&o.length>=
l.length});n>=0&&o.set(t,l.splice(n,1)[0])}return n.map(e=>{var t;return{...e,source:null!=(t=o.get(e))?t:null}})})(e,l,o),u=ng(l,e=>e.length),s=t(0,l.length-1)*e.kerf,f=e.plankLength-u-s,h=l.length>
0&&f>0?n(e.kerf,f):0,p=0===l.length?0:l.length-1+ +(f>0);return{plank:r,pieces:l,i:a,Zo:u,Ta:s+h,Ln:f-h,Sr:p+a.filter(({length:e,source:t})=>t&&t.length>e).length}})(e,r,l)),a=e.rows.map((t,n)=>rO(e,
r,n)),u=rK(e,a,1),s=rK(e,a,2).filter(t=>t<e.alignedDistance),f=r.rows.flatMap((t,n)=>t.runs.flatMap((t,r)=>{var l,o,i;let a=(null!=(i=null==(o=null==(l=e.rows[n])?void 0:l.runs[r])?void 0:o.length)?
i:0)>e.plankLength,u=[t[0],nh(t)];return a?u.flatMap(e=>e?[e.length]:[]):[]}));return{r:o,Sr:ng(o,e=>e.Sr),wa:s.length,ka:rB(u),xa:rB(f),waste:ng(o,t=>e.plankLength-t.Zo),Ue:((e,n,r=e.rows.map((e,
t)=>t))=>{let l=[];r.forEach((e,t)=>{l[e]=t});let o=e.rows.map(()=>0),i=0,a=0,u=(e,t)=>{for(let n=l[e];n<l[t];n++)o[r[n]]++;a+=l[t]-l[e]};for(let{pieces:e,i:r}of n)for(let{rowIndex:n,source:l}of(i+=
t(0,e.length-1)+r.length,e.length>1&&u(e[0].rowIndex,nh(e).rowIndex),r))l&&u(l.rowIndex,n);return{En:o,most:o.reduce((e,n)=>t(e,n),0),ba:i,ln:a}})(e,o,l)}}function rK(e,t,n){var l,o;let i=[];for(
let a=n;a<t.length;a+=1){let u=e.rows.slice(a-n,a+1).map(e=>e.room);if(!u.some(e=>e!==u[0]))for(let e of null!=(l=t[a-n])?l:[])for(let n of null!=(o=t[a])?o:[])i.push(r(e-n))}return i}function rB(e){
return 0===e.length?null:e.reduce((e,t)=>n(e,t))}function rG({e,at:r},i,a,u){let s=e.plankLength,f=i.x+r[i.index],h=(a.x+r[a.index]-f)%s,p=0;for(let e=h-s*l((h+u)/s);e<u;e+=s){if(e<=-u)continue;
let r=t(i.x+1,a.x+1-e)-f;p+=t(0,o((n(i.x+i.length-1,a.x+a.length-1-e)-f)/s)-l(r/s)+1)}return p}function rV(e,t){let l=1/0;for(let o of e)for(let e of t)l=n(l,r(o-e));return l}function rH(e,l,i=
"no play"){var a,u,s;let f;r2("plank length",e.plankLength,1),r2(X,e.kerf,0),r2(eO,null!=(a=e.play)?a:0,0),r2(ei,e.minPiece,0),r2(N,e.minStagger,0),r2(e2,e.alignedDistance,0);let h=0,p=e.rows.map(e=>
e.runs.map(()=>h++)),c=(s=e7===l,f=new $,e.ripPairs.flatMap(([t,n])=>{let[l,o]=[e.rows[t],e.rows[n]];if(!l||!o)throw C(`There are no rows ${t} and ${n} to pair.`);if(!(l.width+o.width+e.kerf<=
e.plankWidth)||t===n||f.has(t)||f.has(n))return[];f.add(t).add(n);let i=l.runs.length===o.runs.length&&l.runs.every((e,t)=>e.length===o.runs[t].length);return[{first:p[t],last:p[n],Yn:s&&i&&r(n-t)>
1}]})),d=e.rows.flatMap((r,l)=>r.runs.map((r,i)=>((e,r,l)=>{let{index:i,rowIndex:a,E:u}=r,{x:s,length:f}=e.rows[a].runs[u];r2("run length",f,1),r2("place of a run",s,g.MIN_SAFE_INTEGER);let h=
e.plankLength,p=f<=h,c=(f-1)%h+1,d=p?0:t(1,n(e.minPiece,o((h+c)/2)));return{index:i,rowIndex:a,E:u,room:e.rows[a].room,x:s,length:f,ue:(f-c)/h,rest:c,o:p,minPiece:d,low:p?rU:{from:d,to:c-d},high:{
from:t(c,d),to:p?h:n(h,h+c-d)},i:((e,t)=>{let n=t.findIndex(({first:t,last:n})=>t.includes(e)||n.includes(e));if(n<0)return{I:v};let{first:r,last:l,Yn:o}=t[n],i=r.includes(e);return o?i?{I:I,We:l[
r.indexOf(e)]}:{I:eW}:{I:i?ew:Y,pair:n}})(i,l)}})(e,{rowIndex:l,E:i,index:p[l][i]},c))),m=d.map(n=>n.o||0===e.minStagger?[]:[n.rowIndex-1,n.rowIndex+1].flatMap(e=>{var t;return null!=(t=p[e])?t:[
]}).filter(r=>{let l=d[r];return l.room===n.room&&!l.o&&t(l.x+l.minPiece-(n.x+n.length-n.minPiece),n.x+n.minPiece-(l.x+l.length-l.minPiece))<e.minStagger})),w=e.kerf+(te===i&&null!=(u=e.play)?u:0);
return{job:e,plankLength:e.plankLength,kerf:w,runs:d,ee:p,Xe:c,De:m}}var rU={from:0,to:-1};function rJ({runs:e},{i:t}){return I===t.I?e[t.We]:void 0}function rZ({o:e,i:t}){return!e&&v===
t.I}function rX({i:e}){return ew===e.I||Y===e.I}function rQ({i:e}){return eW!==e.I}function rY({i:e}){return eW!==e.I&&Y!==e.I}function r0(e,t,n){return t<e.rest?e.rest-t:n+e.rest-t}function r1(e,t){
return t<e.rest?e.ue:e.ue-1}function r2(e,t,n){if(!eA(t)||t<n)throw C(`The ${e} must be a whole number of at least ${n}, found ${t}.`)}function r3(e,n,r){let l=r4(e,n.last,r,"wanted"),o=r4(e,n.first,
r,"given"),i=l.ends.map(()=>-1);l.ends.forEach(({side:e,length:t},n)=>{for(let r=o.ends.length-1;r>=0&&-1===i[n];r--)(S===e||o.ends[r].side===e)&&o.ends[r].length>=t&&!i.includes(r)&&(i[n]=r)});
let a=o._-l._;for(let e=0;e<i.length&&a>0;e++)-1===i[e]&&(i[e]=-2,a--);return{wanted:l,given:o,sources:i,Rr:t(0,l._-o._)}}function r4(e,t,n,r){let{plankLength:l,kerf:o}=e,i={ends:[],_:0},a=(e,t,n)=>{
n<l?i.ends.push({run:e,side:t,length:n}):i._++};for(let u of t){let t=e.runs[u],s=n[u];if(0!==s){if(t.o){let e=s-t.length<=o?h:s===l?f:S;a(u,"wanted"===r?S:e,t.length);continue}a(u,h,s),a(u,f,r0(t,s,
l)),i._+=r1(t,s)}}return i.ends.sort((e,t)=>t.length-e.length),i}function r6(e,t,n){let r,{pieces:l,i:o}=r5(e,t);for(let{zn:t,source:i}of(n?(r=n.length,l.forEach((e,t)=>{for(let t of e)t.plank=r++;
r9(e).forEach((e,r)=>{e.plank=n[2*t+r]})})):r7(l,e.plankLength),o))t.$=t.plank<0||void 0===n||t.plank>=n.length,t.$&&(t.plank=i.plank);let a=new i;return{rows:e.ee.map(e=>({runs:e.map(e=>l[e].map(e=>
{var t;let n;return n=null!=(t=a.get(e.plank))?t:a.size,a.set(e.plank,n),e.$?{length:e.length,plank:n,from:e.from,$:!0}:{length:e.length,plank:n,from:e.from}}))})),f:a.size}}function r5(e,t){let n=
e.runs.map(n=>((e,t,n)=>{let{plankLength:r,kerf:l}=e,o=(e,n,l,o)=>{let i=e===r?m:n;return{row:t.rowIndex,length:e,from:i,begin:l,end:o,plank:-1,$:!1,o:t.o}};if(t.o)return[o(t.length,S,n-t.length-l,
n)];let i=r0(t,n,r),a=nw(r1(t,n),()=>o(r,m,-1,r));return[o(n,h,-1,n),...a,o(i,f,r-l-i,r)]})(e,n,t[n.index]));return{pieces:n,i:e.Xe.flatMap(r=>((e,t,n,r)=>{let l=e.plankLength,{wanted:o,given:i,
sources:a}=r3(e,t,n),u=e=>e.flatMap(e=>r[e].filter(({length:e})=>e===l)),s=u(t.first),f=u(t.last).flatMap(e=>lt(e,s.pop()));return o.ends.forEach((e,t)=>{let n=-2===a[t]?s.pop():i.ends[a[t]]&&le(r,
i.ends[a[t]]);f.push(...lt(le(r,e),n))}),f})(e,r,t,n))}}function r8(e,t){let{pieces:n,i:r}=r5(e,t);r7(n,e.plankLength);let l=new a(2*n.length).fill(-1),o=new i,u=new $;return n.forEach((t,n)=>{r9(
t).forEach((t,r)=>{var i;if(t.$)return;let a=null!=(i=o.get(t.plank))?i:o.size;o.set(t.plank,a),l[2*n+r]=a,t.o&&rX(e.runs[n])&&u.add(a)})}),{O:l,At:[...u],i:r.map(({zn:e,source:t})=>({from:t.row,to:
e.row}))}}function r9(e){return 1===e.length?e:[e[0],nh(e)]}function r7(e,t){((e,t)=>{let l=0,o=[];for(let i of[...e].sort((e,t)=>e.begin-t.begin||t.end-e.end||e.row-t.row)){let e=-1,a=1/0;for(let t=
0;t<o.length&&i.begin>=0;t++){let{end:l,row:u}=o[t];if(l>i.begin)continue;let s=r(u-i.row)+0x40000000*(l!==i.begin);s<a&&(e=t),a=n(a,s)}let u=e<0?l++:o[e].plank;i.plank=u;let s=i.end<t?[{plank:u,end:
i.end,row:i.row}]:[];e<0?o.push(...s):o.splice(e,1,...s)}})(e.flat().filter(e=>!e.$),t)}function le(e,{run:t,side:n}){let r=e[t],l=r[f===n?r.length-1:0];return l.from=n,l}function lt(e,t){return t?(
e.$=!0,e.o&&m!==e.from&&(e.from=m===t.from?f:t.from),[{zn:e,source:t}]):[]}function ln(e,t){let r=[],l=[];return e.rows.forEach((o,i)=>{i>0&&e.rows[i-1].room!==o.room&&(l=[]);let a=[];o.runs.forEach(
(o,u)=>{var s;let f,h=t[i].runs[u],p={rowIndex:i,E:u},c=o.length>e.plankLength?n(h[0].length,nh(h).length):e.minPiece;c<e.minPiece&&r.push({rule:ei,...p,found:c,wanted:e.minPiece});let g=(s=o.x,f=s,
h.slice(0,-1).map(e=>f+=e.length)),d=rV(g,l);d<e.minStagger&&r.push({rule:N,...p,found:d,wanted:e.minStagger}),a.push(...g)}),l=a}),r}function lr(e){var r;let l,o,a,u,s,f,h,{plankLength:p,kerf:c,
minStagger:g,play:d=0}=e,m=(l=t=>{var n,r;return null!=(r=null==(n=e.rows[t])?void 0:n.width)?r:1/0},o=e.ripPairs.filter(([t,n])=>l(t)+l(n)+e.kerf<=e.plankWidth),a=t=>{var n,r;return ng(null!=(r=
null==(n=e.rows[t])?void 0:n.runs)?r:[],e=>e.length)},u=e=>o.flat().filter(t=>t===e).length,new $(o.map(([e,t])=>1===u(e)&&1===u(t)&&a(e)<a(t)?e:t))),w=e.rows.map((e,t)=>({...e,runs:m.has(t)?[]:
e.runs})),k=new i;for(let{length:e}of w.flatMap(e=>e.runs))e<=p&&k.set(e,(null!=(r=k.get(e))?r:0)+1);return{plankLength:p,kerf:c,play:d,minStagger:g,runs:(f=(s=w.map((t,n)=>t.runs.map(({x:e,length:
t},r)=>({rowIndex:n,E:r,x:e,length:t,links:[]})).filter(({length:t})=>t>e.plankLength))).flat(),h=[],s.forEach((r,l)=>{if(0!==l&&w[l-1].room===w[l].room)for(let o of s[l-1])for(let l of r){let r=n(
o.x+o.length,l.x+l.length)-t(o.x,l.x)-2*e.minPiece;r>-e.minStagger&&h.push({a:o,b:l,overlap:r})}}),((e,t)=>{var n,r;let l=new i(e.map((e,t)=>[e,t])),o=e.map((e,t)=>t),a=e=>{let t=e;for(;o[t]!==t;)t=
o[t];return o[e]=t,t};for(let{a:e,b:i}of[...t].sort((e,t)=>t.overlap-e.overlap)){let[t,u]=[null!=(n=l.get(e))?n:0,null!=(r=l.get(i))?r:0],[s,f]=[a(t),a(u)];s!==f&&(o[f]=s,e.links.push(u),
i.links.push(t))}})(f,h),((e,{plankLength:n,minPiece:r})=>{let l=new i,o=[],a=(i,a)=>{let u=e[i];l.set(i,o.length);let s=(u.length-1)%n+1;o.push({rowIndex:u.rowIndex,E:u.E,x:u.x,length:u.length,
minPiece:t(1,r),ue:(u.length-s)/n,rest:s,parent:a})};return e.forEach((t,n)=>{if(l.has(n))return;let r=[[n,-1]];for(let t=r.pop();t;t=r.pop()){let[n,i]=t;if(l.has(n))continue;a(n,i);let u=o.length-1;
for(let t of e[n].links)l.has(t)||r.push([t,u])}}),o})(f,e)),un:[...k].map(([e,t])=>({length:e,count:t})).sort((e,t)=>e.length-t.length),Et:m}}function ll(e,t){let n=()=>new y(e+1);return{
plankLength:e,N:t,Or:n(),Mr:n(),Ar:n(),Er:n()}}function lo(e){let t=0,n=1/0;for(let r=1;r<e.length;r+=1)e[r]<n&&(n=e[r],t=r);return t}function li(e,{run:t,J:r,cn:l},o,i){let{plankLength:a,N:u,Or:s,
Mr:f,Ar:h,Er:p}=e,c=r[l],g=a-2*u+1,d=(({plankLength:e,N:t,Ar:n,Er:r},{run:l,parent:o,J:i})=>{let{minPiece:a}=l,u=(n,r,l)=>{let o=1/0;for(let a=1,u=la(r+l,e);a<=2*t-2;a+=1){let t=i[u];t<o&&(o=t),n[a]=
o,u=la(u+l,e)}},s=o.x+e+t>l.x+l.length-a+1,f=o.x+o.length-e-t<l.x+a-1;return s&&u(n,l.length-a,1),f&&u(r,a,-1),!s&&!f})(e,{run:t,parent:o,J:r});(({plankLength:e,N:t,Or:r,Mr:l},o,i,a)=>{for(let u=1;u<
e;u+=a){let s=n(u+a,e);if(u<2*t){let t=1/0;for(let n=s-1,r=la(i+s-1,e);n>=u;n-=1){let i=o[r];i<t&&(t=i),l[n]=t,r=1===r?e:r-1}}if(1===u){r[s-1]=l[1];continue}let f=1/0;for(let t=u,n=la(i+u,e);t<s;t+=
1){let l=o[n];l<f&&(f=l),r[t]=f,n=n===e?1:n+1}}})(e,r,l,g);let m=la(t.x+l-o.x+u,a);for(let r=1-u;r<u;r+=1){m=1===m?a:m-1;let l=u-r,w=n(f[l],s[l+g-1]);if(!d){let[l,i]=lu(e,{run:t,parent:o,first:m});
if(r<l||r>i)continue;i<u-1&&(w=n(w,h[u-1-i])),l>1-u&&(w=n(w,p[l+u-1]))}i[m]=i[m]+w-c}}function la(e,t){let n=e%t;return n>0?n:n+t}function lu({plankLength:e,N:r},{run:l,parent:o,first:i}){let a=o.x+
i,u=i<o.rest?o.rest-i:e+o.rest-i,s=o.x+o.length-u;return[t(1-r,l.x+l.minPiece-s),n(r-1,l.x+l.length-l.minPiece-a)]}function ls(e){let r=lr(e),u=(e=>{let{plankLength:n,kerf:r,play:o,runs:i,un:a}=e,u=
ng(i,({length:e})=>e+r*l(e/n)),s=ng(a,({length:e,count:t})=>t*(e+r));return t(l((u+s)/(n+r)),l((u+s+o*(i.length+ng(a,({count:e})=>e)))/(n+r+o)))})(r),s=lh(r),f=u,h;return{Xn:({Me:e=1/0,Ae:p=1})=>{
var c,g;let d,m,w,k,x,$,v,b;if(f>=e)return f;f=t(f,(({plankLength:e,kerf:r,runs:i,un:a})=>{var u;let{rest:s,minPiece:f}=null!=(u=i[0])?u:{rest:0,minPiece:1};if(0===s||a.length>0||i.some(e=>e.rest!==
s))return 0;let h=ng(i,e=>e.ue);if(s>=2*f)return s>e-f-r?h+i.length:0;let p=t(f,s),c=n(e,e+s-f);if(p>c)return 0;let g=1+o((c-p)/(s+r));return h+l(i.length/g)})(r));let L=l(s*p);if(f>=e||0===
L)return f;null!=h||(c=(e=>{let r=(e=>{let t,r,l,u=e.plankLength+e.kerf+e.play;return{...ll(e.plankLength,n(e.minStagger,o(e.plankLength/2))),job:e,ge:u,Ge:new y(u+1),Ft:(t=new i,r=a.from(e.runs,({x:
e,length:n})=>{var r;let l=null!=(r=t.get(`${e} ${n}`))?r:t.size;return t.set(`${e} ${n}`,l),l}),l=e.runs.map(()=>[]),e.runs.forEach(({parent:e},t)=>{var n;e>=0&&(null==(n=l[e])||n.push(t))}),{job:e,
Lr:r,es:t.size,ns:l,Lt:new a(e.runs.length),K:[],count:0,above:new i,Fn:new i}),$t:new a(e.runs.length),Ir:new a(e.un.length)}})(e),l=ng(e.runs,e=>e.ue),{Ge:u,Ft:s}=r,f=e=>s.K[s.Lt[e]].J,h={plank:0,
least:0,Ge:u,It:f};return{ge:r.ge,Fr:l,price:e=>{let a=(({Ge:e,ge:t},n)=>{let r=0;for(let e=1;e<=t;e+=1)r+=n[e];let l=1048576/r,i=0;for(let r=1;r<=t;r+=1)i+=o(n[r]*l),e[r]=i;return i})(r,e),s=((e,
r)=>{let{job:l,Ft:o}=e;o.count=0,o.above.clear(),o.Fn.clear();let a=0;for(let i=l.runs.length-1;i>=0;i-=1){let{J:l,cn:u}=((e,t,n)=>{var r,l,o;let{job:i,Lt:a,K:u,above:s}=e,f=e.ns[t].map(e=>a[e]),h=
e.Lr[t],p=f.length>1?-1:h*(i.runs.length+1)+(null!=(r=f[0])?r:-1)+1,c=s.get(p);if(void 0===c){let r=null!=(o=null==(l=u[e.count])?void 0:l.J)?o:new y(i.plankLength+1),a=i.runs[t];n(a,f.map(e=>u[e]),
r),c=((e,t,n)=>{var r;let l=t*(e.job.plankLength+1)+n.cn,o=null!=(r=e.Fn.get(l))?r:[],i=o.find(t=>((e,t)=>{for(let n=1;n<e.length;n+=1)if(e[n]!==t[n])return!1;return!0})(e.K[t].J,n.J));
return void 0!==i?i:(e.Fn.set(l,[...o,e.count]),e.K[e.count]=n,e.count+=1,e.count-1)})(e,h,{run:a,J:r,cn:lo(r)}),p>=0&&s.set(p,c)}return a[t]=c,u[c]})(o,i,(l,o,i)=>{for(let a of((({Ge:e,job:r},{rest:
l,minPiece:o},i,a)=>{let{plankLength:u,kerf:s}=r;a.fill(1/0);for(let t=o;t<=l-o;t+=1)a[t]=i+e[t+s]-e[u-l+t];let f=n(u,u+l-o);for(let n=t(o,l);n<=f;n+=1)a[n]=e[n+s]-e[n-l]})(e,l,r,i),o))li(e,a,l,i)});
if(0===u)return 1/0;a+=l[u]}return(e=>{let{job:t,Ft:n,$t:r}=e,l=new i;t.runs.forEach((o,i)=>{var a;let u=n.Lt[i],{cn:s}=n.K[u];if(o.parent<0){r[i]=s;return}let f=r[o.parent],h=(u*n.es+n.Lr[
o.parent])*(t.plankLength+1)+f,p=null!=(a=l.get(h))?a:((e,{run:t,J:n,cn:r},l,o)=>{let{plankLength:i}=e,[a,u]=lu(e,{run:t,parent:l,first:o}),s=l.x+o,f=la(t.x+r-s,i)%i;if(!(f>=a&&f<=u||f-i>=a&&f-i<=
u))return r;let h=r,p=1/0,c=la(s+u-t.x,i);for(let e=i-1-u+a;e>0;e-=1)n[c=c===i?1:c+1]>=p||(p=n[c],h=c);return h})(e,n.K[u],t.runs[o.parent],f);l.set(h,p),r[i]=p})})(e),a+(({job:e,ge:t,Ge:n,Ir:r})=>{
let l=0;return e.un.forEach(({length:o,count:i},a)=>{let u=1/0;for(let l=0,i=o+e.kerf+e.play;i<=t;l+=1,i+=1){let e=n[i]-n[l];e>=u||(u=e,r[a]=l)}l+=i*u}),l})(e)})(r,a);h={plank:a,least:s,Ge:u,It:f};
let p=s%a;return 1/0===s?s:l+(s-p)/a+ +(p>0)},last:()=>h,overlap:e=>(({job:e,ge:t,$t:n,Ir:r},l)=>{let{kerf:o,play:i,plankLength:a}=e;l.fill(0);let u=(e,n,r)=>{l[e]=l[e]+r,n<t&&(l[n+1]=l[n+1]-r)};
e.runs.forEach(({rest:e},r)=>{let l=n[r];l>=e?u(l-e+1,l+o,1):(u(1,l+o,1),u(a-e+l+1,t,1))}),e.un.forEach(({length:e,count:t},n)=>{let l=r[n];u(l+1,l+e+o+i,t)});for(let e=2;e<=t;e+=1)l[e]=l[e]+l[e-
1]})(r,e)}})(r),g=f,d=new y(c.ge+1).fill(1/c.ge),m=[],w=g,k=1/0,x=0,$=!1,v={Ct:-1,ce:d},b=()=>{let{least:e,plank:t}=c.last();e/t>v.Ct&&Object.assign(v,{Ct:e/t,ce:d.slice()})},h={Xn:({Me:e,ts:r})=>{
for(;w<e&&x<r&&!$;){let r=c.price(d);if(1/0===r)return r;b(),x=r>w?0:x+1,w=t(w,r),m.push((e=>{let r=new a(e.ge+1);e.overlap(r);let l=r[1],o=l;for(let i=2;i<=e.ge;i+=1)l=n(l,r[i]),o=t(o,r[i]);for(
let t=1;t<=e.ge;t+=1)r[t]=r[t]-l;return{overlap:r,least:l,most:o-l}})(c)),m.length>32&&m.shift();let l=x<12?.08:.03,o=n(e-1,1.1*w)+l-w;x>=8&&x%4==0&&(k=t(n(k,o)/2,l));let i=((e,r,l)=>{let o=new y(
r.length);for(let i=0;i<5;i+=1){let i=!1;for(let a=r.length-1;a>=0;a-=1){let u=((e,{overlap:r,least:l,most:o},i)=>{let a=0,u=0,s=0;for(let t=1;t<e.length;t+=1){let n=e[t],l=r[t],o=n*l;a+=n,u+=o,s+=o*
l}let f=i-l-(u/=a);if(f<=1e-6||0===o)return 0;let h=n(f/t(s/a-u*u,1e-9),4/o,1),p=((e,t,n)=>{let r=(1+e/2)/(1-e/2),l=[n];for(let e=n;l.length<=t;)l.push(e*=r);return l})(h,o,1/a);for(let t=1;t<
e.length;t+=1)e[t]=e[t]*p[r[t]];return h})(e,r[a],l);u>0&&(i=!0),o[a]=o[a]+u}if(!i)return null;for(let n=1;n<e.length;n+=1)e[n]=t(e[n],1e-9)}return o})(d,m,w+n(k,o)-c.Fr),u=x<24?0:.2;$=null!==i&&((e,
t)=>{let n=new y(e[0].overlap.length),r=0,l=0;e.forEach(({overlap:e,least:o},i)=>{let a=t[i];if(r+=a,l+=a*o,0!==a)for(let t=1;t<n.length;t+=1)n[t]=n[t]+a*e[t]});let o=0;for(let e of n)e>o&&(o=e);
return(l+o)/r})(m,i)<=w+u-c.Fr}return w},rs:()=>{if(!(v.Ct<0))return c.price(v.ce),c.last()}});let E=h.Xn({Me:e,ts:L});return f=1/0===E?u:E},Cr:()=>{let e=null==h?void 0:h.rs();if(!e)return;let t=ng(
r.runs,e=>e.ue);return{runs:r,$r:e,fn:n=>(n-t)*e.plank-e.least}}}}function lf({runs:e}){return new $(e.map(({x:e,length:t})=>`${e} ${t}`)).size}function lh(e){let{plankLength:t,runs:r,un:l}=e;if((
r.length+l.length+1)*t>4194304)return 0;let o=lf(e)*t;return(30+.04*r.length)*n(1,262144/o)}function lp(e){return{state:0|e||1}}function lc(e,t){let n=e.state;return n^=n<<13,n^=n>>>17,e.state=n^=n<<
5,(n>>>0)%t}function lg(e){let{e:r}=e,{runs:l,plankLength:o}=r,i=a.from(l,e=>{var l;let o;return l=ld(r,e,e.rowIndex-1),o=l=>{let o=r.runs[l];return n(o.x+o.length,e.x+e.length)-t(o.x,e.x)},l.reduce(
(e,t)=>e<0||o(t)>o(e)?t:e,-1)}),u=l.map(()=>[]);for(let{index:e}of l){let t=i[e],n=t<0?-1:i[t];if(n>=0)for(let r of[n,t,e])u[r].push(e)}let s={t:e,dn:l.map(e=>[-2,2].flatMap(t=>ld(r,e,e.rowIndex+
t))),before:i,Qn:u,ends:new a(o+2),Zn:new a(o+2),M:0,c:0,be:0};for(let e of l)lw(s,e,1),s.M+=ly(s,e)/2,s.be+=g(lb(s,e.index));return s}function ld(e,t,n){var r;return t.o?[]:(null!=(r=e.ee[n])?r:[
]).filter(n=>e.runs[n].room===t.room&&!e.runs[n].o)}function lm(e,t,n){lw(e,t,n),e.M+=n*ly(e,t),e.be+=n*l$(e,t);let r=rJ(e.t.e,t);r&&(e.M+=n*ly(e,r),e.be+=n*l$(e,r))}function lw(e,t,n){let{e:r,at:l}=
e.t,{plankLength:o,kerf:i}=r;if(!rY(t))return;let a=l[t.index],u=t.o?t.length+o-a:r0(t,a,o);(t.o||a<o)&&lk(e,e.ends,a,n),u<o&&o-i-u>=0&&lk(e,e.Zn,o-i-u,n);let s=t.o?1:+(a<o)+ +(u<o);e.c+=n*
s}function lk(e,t,r,l){let o=n(e.ends[r],e.Zn[r]);t[r]+=l,e.c-=n(e.ends[r],e.Zn[r])-o}function ly(e,t){let{job:n,runs:r}=e.t.e,l=0;for(let o of e.dn[t.index])l+=rG(e.t,t,r[o],n.alignedDistance);
return l}function lx(e,t,n){let r=e.dn[t.index].includes(n.index)?rG(e.t,t,n,e.t.e.job.alignedDistance):0;return ly(e,t)+ly(e,n)-r}function l$(e,t){let n=0;for(let r of e.Qn[t.index])lb(e,r)&&n++;
return n}function lv(e,t,n){let r=e.Qn[t.index],l=l$(e,t);for(let t of e.Qn[n.index])!r.includes(t)&&lb(e,t)&&l++;return l}function lb({before:e,t:t},r){let l=e[r],o=l<0?-1:e[l];if(o<0)return!1;let{
plankLength:i,job:a}=t.e,u=((lL(t,r)-2*lL(t,l)+lL(t,o))%i+i)%i;return n(u,i-u)<a.alignedDistance}function lL({e,at:t},n){return e.runs[n].x+t[n]}function lE(){return{from:[],to:[],count:
0}}function lS(){return{...lE(),Je:lE()}}function lM(e,t){for(let n=0;n<e.count;n++)if(t>=e.from[n]&&t<=e.to[n])return!0;return!1}function lj(e,t,n){let{Je:r}=e;r.count=0,l_(r,t,n);let l=rJ(n.e,t);
l&&l_(r,l,n),lA(e,t)}function lI(e,t){e.Je.count=0,lA(e,t)}function lA(e,t){e.count=0,lO(e,e.Je,t.low.from,t.low.to),lO(e,e.Je,t.high.from,t.high.to)}function l_(e,t,{e:n,at:r,N:l}){for(
let o of n.De[t.index])0!==r[o]&&lP(e,t,{other:n.runs[o],at:r[o],fe:l[t.index]-1,L:n.plankLength})}function lP(e,r,{other:o,at:i,fe:a,L:u}){let s=r.x+1,f=r.x+r.length-1,h=n(o.x+o.length-1,f+a),p=t(0,
l((s-a-o.x-i)/u)),c=!1;for(let l=o.x+i+p*u;l<=h;l+=u){let o=l-a>=s&&l+a<=f;o&&c||(c=c||o,((e,t,n,r)=>{if(n<t)return;if(n-t>=r-1)return lT(e,1,r);let l=(t-1)%r+1,o=(n-1)%r+1;o>=l?lT(e,l,o):(lT(e,1,o),
lT(e,l,r))})(e,t(s,l-a)-r.x,n(f,l+a)-r.x,u))}}function lT(e,t,n){let r=e.count++;for(;r>0&&e.from[r-1]>t;r--)e.from[r]=e.from[r-1],e.to[r]=e.to[r-1];e.from[r]=t,e.to[r]=n}function lO(e,r,l,o){let i=
l;for(let l=0;l<r.count&&i<=o;l++)r.from[l]>i&&lC(e,i,n(o,r.from[l]-1)),i=t(i,r.to[l]+1);i<=o&&lC(e,i,o)}function lC(e,t,n){e.from[e.count]=t,e.to[e.count]=n,e.count++}function lR(e,t){let{e:n,N:r}=
e,{runs:l,De:o}=n,i=0;for(let n of o[t.index])i+=rG(e,t,l[n],r[t.index]);let a=rJ(n,t);return a?i+lR(e,a):i}function lN({plankLength:e,kerf:t},{rest:n}){return{rest:n,fe:n+t,L:e}}function lz(e,{rest:
t,fe:n,L:r},l,o){l>=t?lW(e,l-n,l,o):(lW(e,0,l,o),lW(e,l+r-n,r,o))}function lF(e,t,n,r){let l=n-1,o=0;for(let n=1;n<=r;n++)o=o+(l-t[n]>>>31)|0,e[n]=o}function lW(e,n,r,l){for(let o=t(0,n)+1;o<=r;
o++)e[o]+=l}function lD(e){return{e,at:new a(e.runs.length),N:new a(e.runs.length).fill(e.job.minStagger),depth:new a(e.plankLength+2),_:0,et:e.Xe.map(()=>!1),p:lp(2654435*e.runs.length+
e.plankLength),s:0}}function lq(e,t,n){let{i:r}=t;eD in r&&lG(e,r.pair,!1),lU(e,t,n),Y!==r.I&&lB(e,t,1),eD in r&&lG(e,r.pair,!0)}function lK(e,t){let{i:n}=t;eD in n&&lG(e,n.pair,!1),Y!==n.I&&lB(e,t,-
1)}function lB(e,t,n){e._+=n*t.ue,lz(e.depth,lN(e.e,t),e.at[t.index],n)}function lG(e,t,n){if(e.et[t]===n)return;e.et[t]=n;let r=n?1:-1,{e:l,at:o,depth:i}=e,a=l.plankLength,{wanted:u,sources:s,Rr:f}=
r3(l,l.Xe[t],o);e._+=r*f,u.ends.forEach(({run:e,side:t,length:n},u)=>{-1===s[u]&&(l.runs[e].o?lz(i,lN(l,l.runs[e]),o[e],r):h===t?lW(i,0,n,r):lW(i,a-l.kerf-n,a,r))})}function lV(e){e.at.fill(0),
e.depth.fill(0),e._=0,e.et.fill(!1)}function lH(e,t){e.depth.fill(0),e._=0,t!==e.at&&e.at.set(t);let{runs:n,Xe:r}=e.e;for(let t of n)rY(t)&&lB(e,t,1);e.et.fill(!1),r.forEach(({Yn:t},n)=>{t||lG(e,n,!
0)})}function lU(e,t,n){e.at[t.index]=n,I===t.i.I&&(e.at[t.i.We]=n)}function lJ(e,t,n){let r=e.at[t.index];lU(e,t,e.at[n.index]),lU(e,n,r)}function lZ(e){let{depth:t,e:n}=e,r=0;for(let e=1;e<=
n.plankLength;e++)t[e]>r&&(r=t[e]);return e._+r}function lX(e){return(1&e)==1}function lQ({t:e},t){return e.e.runs[t>>1].o}function lY({t:e,_t:t},n){let{at:r,e:l}=e;if(n.o){t[2*n.index]=n.length;
return}t[2*n.index]=r[n.index],t[2*n.index+1]=r0(n,r[n.index],l.plankLength)}function l0(e,t,n){let r=e.de[t],l=e.me[t],o=e.we[t],i=(r<0?0:1)+(l<0?0:1)+o.length;if(0===i)return;let{_r:a}=e;e.used+=n,
r>=0&&l>r&&(e.nt+=n);let u=a[r>=0?r:l>=0?l:o[0]],s=l>=0?a[l]:u;s<u&&([u,s]=[s,u]);for(let e=0;e<o.length;e++){let t=a[o[e]];t<u&&(u=t),t>s&&(s=t)}let f=l2(e,t,-1,-1),h=l3(e,t,-1,-1)-f;e.c+=n*(i-1+ +(
h>0)),f>0&&(e.Ke+=n*(1e3+f)),s>u&&l1(e,u,s,n)}function l1(e,t,n,r){let{Ue:l,Nr:o}=e,i=0;for(let e=t;e<n;e++){let t=l[e];l[e]=t+r,i+=o[t+r]-o[t]}e.price+=i,e.ln+=r*(n-t)}function l2(e,t,n,r){let{_t:l,
de:o,me:i,we:a,kerf:u,t:s}=e,f=o[t],h=i[t],p=a[t],c=-s.e.plankLength-u;f>=0&&f!==n&&(c+=l[f]+u),h>=0&&h!==n&&(c+=l[h]+u);for(let e=0;e<p.length;e++)p[e]!==n&&(c+=l[p[e]]+u);return r>=0&&(c+=u),0===
e.play?c:c+l3(e,t,n,r)}function l3(e,t,n,r){let{de:l,me:o,we:i,play:a}=e;if(0===a)return 0;let u=o[t],s=i[t],f=1/0,h=0,p=e=>{e<0||e===n||(h++,e<f&&(f=e))};p(u);for(let e=0;e<s.length;e++)p(s[e]);if(
r>=0&&(lX(r)||lQ(e,r))&&p(r),0===h)return 0;let c=!(r>=0)||lX(r)||lQ(e,r)?l[t]:r;return a*(c>=0&&c!==n&&c<f?h:h-1)}function l4(e,t,n,r){e.O[n]=t,lX(n)?e.me[t]=n:lQ(e,n)?r<0?e.we[t].push(n):e.we[t][
e.we[t].indexOf(r)]=n:e.de[t]=n}function l6(e){let{D:t}=e.F;return l5(e)+e.oe.M*t.M+e.oe.Ee*t.be}function l5({F:e,oe:t}){let n=e.c-t.ss;return e.price+t.Br*e.ln+t.cut*e.c+(n>0?t.Bt*n:0)+t.Ke*e.Ke+
t.plank*e.used+t.nt*e.nt}function l8({F:e,oe:t}){return t.M*e.D.M+6*t.Ee}function l9(e,t){return e.rest===t.rest&&e.o===t.o&&l7(e)&&l7(t)}function l7(e){return v===e.i.I}function oe(e,t,n,r){let{F:
l}=e,{t:o,O:i}=l;ot(l,t,n);let a=0===lR(o,t)&&0===lR(o,n);if(ot(l,t,n),!a)return!1;let u=oi(e);oa(e,i[2*t.index]),oa(e,i[2*n.index]),t.o||(oa(e,i[2*t.index+1]),oa(e,i[2*n.index+1])),on(l,t,n),ou(e,
1);let s=l5(e)-u;return!!(s-l8(e)<=r&&(({F:e,oe:t},n,r,l)=>{let{D:o}=e,i=lx(o,n,r),a=lv(o,n,r);return ot(e,n,r),i-=lx(o,n,r),a-=lv(o,n,r),ot(e,n,r),!(t.M*i+t.Ee*a>l)&&(o.M+=i,o.be+=a,!0)})(e,t,n,r-
s))||(ou(e,-1),on(l,t,n),ou(e,1),!1)}function ot({t:e},t,n){let r=e.at[t.index];e.at[t.index]=e.at[n.index],e.at[n.index]=r}function on(e,t,n){let{O:r}=e;ot(e,t,n),lY(e,t),lY(e,n);for(let l=0;l<(t.o?
1:2);l++){let o=2*t.index+l,i=2*n.index+l,a=r[o],u=r[i];a!==u&&(l4(e,a,i,o),l4(e,u,o,i))}}function or(e,t,n,r,l){let{F:o}=e,{O:i,Nt:a}=o,u=i[t];if(u===n||1===a[u]||1===a[n])return!1;let s=50>lc(
o.t.p,100),f=oi(e);oa(e,u),oa(e,n),ol(o,t,u,n,r);let h=of(e,n,-1,s)&&of(e,u,-1,s);return!!os(e,f,l,h)||(ol(o,t,n,u,r),ou(e,1),!1)}function ol(e,t,n,r,l){if(l<0){lX(t)?e.me[n]=-1:lQ(e,t)?e.we[n]=e.we[
n].filter(e=>e!==t):e.de[n]=-1,l4(e,r,t,-1);return}l4(e,r,t,l),l4(e,n,l,t)}function oo(e,t,n,r){let{F:l}=e,{O:o,t:i}=l;if(!og(t,i.at[t.index],n))return!1;let a=2*t.index,u=oi(e);oc(e,t);let s=70>lc(
l.t.p,100),f=s&&oh(l,o[a]),h=s&&oh(l,o[a+1]);oa(e,o[a]),oa(e,o[a+1]),od(l,t,n);let p=of(e,o[a],a,f)&&of(e,o[a+1],a+1,h);return!!os(e,u,r,p)||(ou(e,1),!1)}function oi(e){return e.tt=0,e.je=0,l5(
e)}function oa(e,t){if(t<0)return;let{vr:n}=e;for(let r=0;r<e.tt;r++)if(n[r]===t)return;n[e.tt++]=t,l0(e.F,t,-1)}function ou(e,t){for(let n=0;n<e.tt;n++)l0(e.F,e.vr[n],t)}function os(e,t,n,r){if(r&&(
({F:e,rt:t,je:n})=>{let{t:r}=e;for(let e=0;e<n;e++)if(lR(r,r.e.runs[t[e]])>0)return!1;return!0})(e)){ou(e,1);let r=l5(e)-t;if(r-l8(e)<=n&&(({F:e,oe:t,rt:n,je:r,vt:l,os:o},i)=>{if(0===r)return i>=0;
let{D:a,t:u}=e,{runs:s}=u.e,f=0,h=0;for(let e=0;e<r;e++){let t=s[n[e]];o[e]=u.at[t.index],f+=om(a,t),h+=ow(a,t),lU(u,t,l[e]),f-=om(a,t),h-=ow(a,t)}for(let e=0;e<r;e++)lU(u,s[n[e]],o[e]);return!(t.M*
f+t.Ee*h>i)&&(a.M+=f,a.be+=h,!0)})(e,n-r))return!0;ou(e,-1)}let{runs:l}=e.F.t.e;for(let t=0;t<e.je;t++)od(e.F,l[e.rt[t]],e.vt[t]);return!1}function of(e,n,r,l){let{F:o}=e,{O:i,t:a,Nt:u}=o,s=r,f=l;
for(let r=n;r>=0;){let n=l2(o,r,-1,-1);if(0===n||n<0&&!f)break;let l=1===u[r]?-1:((e,n,r)=>{let{de:l,me:o,t:i}=e,a=op(e,l[n],r)?l[n]:-1,u=op(e,o[n],r)?o[n]:-1;return a<0||u<0?t(a,u):0===lc(i.p,2)?a:
u})(o,r,s);if(l<0)return n<0;let h=a.e.runs[l>>1],p=a.at[h.index],c=lX(l)?p+n:p-n;if(!og(h,p,c)||!oc(e,h))return n<0;f=oh(o,r=i[s=1^l]),oa(e,r),od(o,h,c)}return!0}function oh(e,t){return t>=0&&e.de[
t]>=0&&e.me[t]>=0&&0===l2(e,t,-1,-1)}function op({t:e},t,n){return t>=0&&t!==n&&!rX(e.e.runs[t>>1])}function oc(e,t){let{rt:n,vt:r,F:l}=e;if(12===e.je)return!1;for(let r=0;r<e.je;r++)if(n[r]===
t.index)return!1;return n[e.je]=t.index,r[e.je++]=l.t.at[t.index],!0}function og(e,t,n){let{from:r,to:l}=t<e.rest?e.low:e.high;return n>=r&&n<=l}function od(e,t,n){lU(e.t,t,n),lY(e,t)}function om(e,
t){let{runs:n}=e.t.e,{i:r}=t;return I===r.I?lx(e,t,n[r.We]):ly(e,t)}function ow(e,t){let{runs:n}=e.t.e,{i:r}=t;return I===r.I?lv(e,t,n[r.We]):l$(e,t)}var ok={Br:2,cut:30,Bt:300,M:300,Ee:1,Ke:1e3,
plank:4,nt:3},oy={...ok,cut:0,Bt:0,M:0,Ee:0,Ke:1,Br:0};function*ox(e,n,r){let o=ov(e,n,ok),i=o.F.used+r.spare,{oe:a}=o,u={...a,Bt:0},s=ob(o),f=r.mn&&s.most>5?s.most:1/0;(({Nr:e},t)=>{for(let n=t+1;n<
e.length;n++)e[n]+=400*(n-t)})(o.F,f);let h=0===e.e.runs.length?0:l(r.z/60),p=e.e.runs.length>100;p&&!r.mn&&(e=>{let{oe:n}=e;for(let r of(e.oe={...n,M:0x20000000000},e.F.t.e.runs))r.o||((e,n)=>{let{
runs:r}=e.F.t.e,l=t(0,n.index-30);for(let t=l;t<n.index;t++)if(!r[t].o)for(let l of[1,0]){let o=(({F:e},t)=>{let n=e.O[t];if(n<0)return-1;let r=(1&t)==1?e.de[n]:e.me[n];return r<0?-1:r>>1})(e,2*t+l);
if(o===n.index||!(o<n.index||!l9(n,r[o]))&&oe(e,n,r[o],0x10000000000))return}})(e,r);e.oe=n})(o);let c=45*!!r.mn;for(let e=p||r.mn?30:120;c<60;c++,e*=.93){o.oe=c<35?u:a;for(let t=0;t<h;t++)oL(o,e,i);
if(o.oe=a,l6(o)<s.In){let e=ob(o);e.most<=f&&(s=e)}yield}return e.s+=30*h*60,e.at.set(s.at),{...s,shared:{...n,O:s.O}}}function*o$(e,t,n){let r=ov(e,t,oy),{F:o}=r,i=o.used,a=l(n/60);for(let t=0,n=
120;t<60&&o.Ke>0;t++,n*=.93){for(let e=0;e<a&&o.Ke>0;e++)oL(r,n,i);e.s+=30*a,yield}let{at:u,O:s,...f}=ob(r);return{...f,at:u,shared:{...t,O:s}}}function ov(e,t,n){let r=2*e.e.runs.length+t.i.length,
l=((e,t,n)=>{var r;let{runs:l,job:o}=e.e,i=2*l.length,u={t:e,D:lg(e),kerf:o.kerf,play:null!=(r=o.play)?r:0,_r:a.from({length:2*l.length},(e,t)=>l[t>>1].rowIndex),_t:new a(2*l.length),O:t.O.slice(),
de:new a(i).fill(-1),me:new a(i).fill(-1),we:nw(i,()=>[]),Nt:new ek(i),Ue:new a(o.rows.length),Nr:n,price:0,ln:0,c:0,used:0,nt:0,Ke:0};for(let e of t.At)u.Nt[e]=1;for(let e of l)lY(u,e);for(let{from:
e,to:n}of(t.O.forEach((e,t)=>{e>=0&&l4(u,e,t,-1)}),t.i))l1(u,e,n,1);for(let e=0;e<i;e++)l0(u,e,1);return u})(e,t,a.from({length:r+2},(e,t)=>4*t*t));return{F:l,oe:{...n,ss:l.c+1},vr:new a(32),tt:0,rt:
new a(12),vt:new a(12),os:new a(12),je:0,range:new a(2)}}function ob(e){let{t:n,O:r,Ue:l,ln:o,c:i,Ke:a}=e.F;return{In:l6(e),at:n.at.slice(),O:r.slice(),most:l.reduce((e,n)=>t(e,n),0),ln:o,c:i,$n:0===
a}}function oL(e,r,l){let i,a,{e:u,p:s}=e.F.t,f=u.runs[lc(s,u.runs.length)];if(!rQ(f))return;let h=o(r*Math.LN2*((a=Math.clz32(i=lc(s,0x3fffffff)+1)-2)+2-(i<<a>>>6)/8388608)),p=lc(s,100);p<40?((e,t,
n)=>{let{F:r}=e,{e:l,p:o}=r.t,i=10>lc(o,100)?lc(o,l.ee.length):oE(r,(({t:e,O:t,de:n,me:r,_r:l},o)=>{let i=o.o?0:lc(e.p,2),a=t[2*o.index+i];if(a<0)return o.rowIndex;let u=1===i||r[a]<0?n[a]:r[a];
return u<0?o.rowIndex:l[u]})(r,t)),a=oS(r,i);a!==t&&l9(t,a)&&oe(e,t,a,n)})(e,f,h):p<80||f.o?((e,t,n,r)=>{let{F:l}=e,{t:o,O:i,de:a,me:u,we:s}=l,{p:f}=o,h=2*t.index+(t.o?0:lc(f,2));if(i[h]<0)return;if(
l.used<r&&10>lc(f,100))return or(e,h,(({de:e,me:t,we:n},r)=>{let l=e.length;for(let o=0;o<l;o++){let i=(r+o)%l;if(e[i]<0&&t[i]<0&&0===n[i].length)return i}return-1})(l,lc(f,a.length)),-1,n);let p=((
e,t,n)=>{let r=oS(e,oE(e,t.rowIndex));if(r.o)return e.O[2*r.index];let l=t.o?lc(e.t.p,2):+!lX(n);return e.O[2*r.index+l]})(l,t,h);if(p<0)return;let c=lX(h)?u[p]:a[p];if(t.o){let e=s[p];c=0===
e.length||0===lc(f,2)?-1:e[lc(f,e.length)]}or(e,h,p,c,n)})(e,f,h,l):((e,r,l)=>{let{F:o,range:i}=e,{at:a,p:u}=o.t;if(rX(r))return;let s=a[r.index];if(20>lc(u,100)){let t=1+lc(u,0===lc(u,4)?200:12);oo(
e,r,0===lc(u,2)?s+t:s-t,l);return}((e,r,l)=>{let{t:o,O:i,_t:a}=e,u=o.at[r.index],s=2*r.index,f=s+1,{from:h,to:p}=u<r.rest?r.low:r.high;l[0]=h,l[1]=p,i[s]<0||i[s]===i[f]||(l[1]=n(l[1],-l2(e,i[s],s,
s)),l[0]=t(l[0],u+a[f]+l2(e,i[f],f,f)))})(o,r,i);let[f,h]=i;if(h<=f)return;let p=0===lc(u,2)?f:h,c=50>lc(u,100)?p:f+lc(u,h-f+1);c!==s&&oo(e,r,c,l)})(e,f,h)}function oE({t:e},r){let{e:l,p:o}=e,i=1+lc(
o,3),a=r+lc(o,2*i+1)-i;return t(0,n(l.ee.length-1,a))}function oS({t:e},t){let{ee:n,runs:r}=e.e,l=n[t];return r[1===l.length?l[0]:l[lc(e.p,l.length)]]}function oM(e,t,{lengths:n,gives:r,values:l},o,
i,{first:a,j:u,lastOf:s}){let{plankLength:f,kerf:h,play:p,ot:c,Dt:g,se:d}=t,{plank:m,Me:w}=d;e.count=0,e.c=0,e.Ut=0;let k=u<0,y=k?3:r[o+u],x=k?m:l[o+u];if(i.o)return void oj(e,t,k?f-i.length:n[o+u]-
h-i.length-p,y,x-d.walls[i.index],!1);let $=r0(i,a,f),v=k?f-a:n[o+u]-h-a-c,b=x-w[a+h],L=m-w[f-$];if(-2===s){e.c++,oj(e,t,v-h-$-p,0,b-L,!1);return}if(-3!==u&&oj(e,t,v,2&y,b,!1),-1===s)oj(e,t,f-$,1,w[
f-$],!0);else if(-3!==s){let i=o+s;oj(e,t,n[i]-h-$-g,1&r[i],l[i]-L,!0)}}function oj(e,{Cn:t,Wt:n},r,l,o,i){if(r>0&&e.c++,r<t||0===l&&!n){e.Ut+=o;return}e.lengths[e.count]=r,e.gives[e.count]=l,
e.values[e.count]=o,e.Ur[e.count++]=i}function oI(e,t,n){let{g:r,from:l,run:o,kerf:i,play:a,ot:u,Dt:s,plankLength:f}=e;if(1===e.yn.$[2*o.index+1])return void oO(e,{first:t,j:n,lastOf:-3});let h=r0(o,
t,f),p=h===f?-1:o_(e,h+s,2,n);p>=0&&oO(e,{first:t,j:n,lastOf:p});let c=l*r.room+n,g=n<0?f-t:r.lengths[c]-i-t-u;(-1===n||(2&r.gives[c])>0)&&g-i>=h+a&&oO(e,{first:t,j:n,lastOf:-2}),oA(e,p,h+s)||oO(e,{
first:t,j:n,lastOf:-1})}function oA({g:e,from:t,kerf:r,Cn:l},o,i){return o>=0&&e.lengths[t*e.room+o]-r-i<n(l,8)}function o_({g:e,from:t,kerf:n},r,l,o){let{lengths:i,gives:a,A:u,room:s}=e,f=t*s,h=-1;
for(let e=0;e<u[t];e++)e===o||(a[f+e]&l)!==l||i[f+e]-n<r||(h<0||i[f+e]<i[f+h])&&(h=e);return h}function oP(e,t){t>0&&!e.includes(t)&&e.push(t)}function oT({count:e,from:n,to:r},l,o){for(let i=0;i<e;
i++)if(r[i]>=l&&n[i]<=o)return t(l,n[i]);return 0}function oO(e,t){let{g:r,from:l,run:o,gn:i,se:a,best:u}=e,{first:s,j:f,lastOf:h}=t;e.looks++,oM(i,e,r,l*r.room,o,t);let p=a.J[o.index],c=p?p[s]-
e.least:0,g=oR(e,t),d=r.waste[l]+i.Ut+c+g;if(d>e.is)return;let m=oC(e,f)+oC(e,h),w=(e.as?f:h)>=0,k=r.price[l]+e.M+10*m+100*i.c+40*!!w,y=k+e.ls*d+e.offcut*(({g:e,from:t,gn:n,lt:r},{j:l,lastOf:o})=>{
let i=e.A[t]+n.count,a=i-(l>=0)-(o>=0);for(let e=0;e<i;e++)a-=r[e];return a})(e,t);if(!(({it:e,count:t,width:n},r)=>t<n||r<e[n-1])(u,y))return;let x=((e,t,r)=>{let{it:l,keys:o,width:i}=e,a=0;for(;a<
e.count&&o[a]!==r;)a++;if(a<e.count&&l[a]<=t)return-1;let u=a;for(a===e.count&&(e.count=n(e.count+1,i),u=e.count-1);u>0&&l[u-1]>t;u--){var s;s=u,e.it[s]=e.it[s-1],e.keys[s]=e.keys[s-1],e.from[s]=
e.from[s-1],e.V[s]=e.V[s-1],e.j[s]=e.j[s-1],e.lastOf[s]=e.lastOf[s-1],e.waste[s]=e.waste[s-1],e.price[s]=e.price[s-1]}return l[u]=t,o[u]=r,u})(u,y,(({g:e,from:t,gn:n,lt:r},{first:l,j:o,lastOf:i})=>{
let{A:a,lengths:u,gives:s,Gt:f,room:h}=e,p=a[t],c=W(l,0x2c1b3c6d)^f[t];for(let e=0;e<p;e++)e!==o&&e!==i&&0===r[e]&&(c=c+oN(u[t*h+e],s[t*h+e])|0);for(let e=0;e<n.count;e++)0===r[p+e]&&(c=c+oN(
n.lengths[e],n.gives[e])|0);return c})(e,t));x<0||(u.from[x]=l,u.V[x]=s,u.j[x]=f,u.lastOf[x]=h,u.waste[x]=d,u.price[x]=k)}function oC({g:e,from:t,run:n},l){return l<0?0:r(n.rowIndex-e.rows[t*e.room+
l])}function oR(e,{j:t,lastOf:n}){let{g:r,from:l,run:o,gn:i,lt:a,Jt:u,most:s}=e,{A:f,values:h,room:p}=r,c=f[l],g=c+i.count;if(a.fill(0,0,g),!u[o.index])return 0;let d=g-(t>=0)-(n>=0),m=0;for(;d>s;
d--){let e=1/0,r=-1;for(let o=0;o<g;o++){if(o===t||o===n||1===a[o])continue;let u=o<c?h[l*p+o]:i.values[o-c];u>=e||(e=u,r=o)}a[r]=1,m+=e}return m}function oN(e,t){let n=W(4*e+t+1,0x9e3779b1);
return W(n^n>>>15,0x85ebca6b)}function*oz(e,t,n,r){var l,o;let{e:i}=e;if(0===i.runs.length)return;let u=i.runs.some(rX)?null!=(o=null==(l=r.pin)?void 0:l.call(r,i,t,n,r.r))?o:[]:[(({runs:e})=>{let t=
new a(e.length);return{V:t,$:new ek(2*e.length),_:t,hn:0,i:[]}})(i)];for(let l of r.bn)for(let o of u){let a=yield*oF(e,t,n,o,r,l);if(a)return{at:a.at,r:a.r,shared:((e,{at:t,O:n},{i:r})=>{let l=
new $([...new $(e.Xe.flatMap(({Yn:e,last:t})=>e?t:[]))].map(t=>e.runs[t].rowIndex));return{O:n,At:[],i:[...0===l.size?[]:r8(e,t).i.filter(({to:e})=>l.has(e)),...r]}})(i,a,o)}}}function*oF(e,r,l,o,{r:
u,width:s,Kt:f},h){let{e:p}=e,c={r:u,width:s,...h},g=p.ee.length,d=f?nw(g-1,e=>e+1):[],m=p.runs.filter(rQ).reduce((e,n)=>t(e,n.rowIndex+1),0),w=yield*function*(e,r,l,o,u,s,f){let{runs:h,ee:p}=e.e,c=
u.most+2*p.reduce((e,n)=>t(e,n.length),0)+2,g=()=>{var e,t;let n;return e=h.length,t=u.width,n=e=>new a(e),{at:nw(t,()=>n(e)),room:c,A:n(t),lengths:n(t*c),gives:n(t*c),values:new y(t*c),rows:n(t*c),
pn:n(t*c),r:n(t),st:n(t),waste:new y(t),price:new y(t),Gt:n(t)}},d=g(),m=((e,r,l,o,u,{r:s,most:f,width:h,offcut:p},c)=>{var g;let d,m,{runs:w,job:k,plankLength:x}=e.e,$=w.filter(rQ),v=$.filter(e=>!
e.o),b=v.length<$.length,{play:L=0}=k,E=new i;for(let{rest:e,index:t}of v)E.set(e,[...null!=(g=E.get(e))?g:[],r[t]]);let S=$.reduce((e,t)=>n(e,t.o?t.length:t.minPiece),x);return{t:e,plankLength:x,
kerf:k.kerf,play:L,ot:eq===c?L:0,Dt:eq!==c||b?L:0,Cn:k.kerf+S,as:eq===c,Wt:b,se:l,D:lg(e),yn:o,most:f,offcut:p,is:l.fn(s)+o.hn,ls:t(3e4,1e3*w.length)/l.plank,known:E,Jt:w.map(({index:e,rowIndex:t})=>
{var n;return(null==(n=w[e+1])?void 0:n.rowIndex)!==t}),best:(d=()=>new a(h+1),m=()=>new y(h+1),{width:h,count:0,it:m(),keys:d(),from:d(),V:d(),j:d(),lastOf:d(),waste:m(),price:m()}),g:u,from:0,run:
w[0],least:0,M:0,X:lS(),V:[],gn:{lengths:new a(2),gives:new a(2),values:new y(2),Ur:[!1,!1],count:0,c:0,Ut:0},lt:new ek(u.room),looks:0}})(e,r,l,o,g(),u,s),{best:w,Jt:k}=m,x=(({e})=>{let{runs:t,ee:
n}=e,r=t.flatMap(({i:e})=>I===e.I?[e.We]:[]);return t.map(({rowIndex:e,index:t})=>[...[e-2,e-1,e].flatMap(e=>{var t;return null!=(t=n[e])?t:[]}).filter(e=>e<=t),...r])})(e),$=[],v=new i,b=1,L=!1;for(
let e of h.filter(rQ)){for(m.run=e,w.count=0,m.from=0;m.from<b;m.from++)(e=>{let{run:r,play:l,ot:o,plankLength:i,yn:a}=e;if(e.M=0,r.o){e.least=0;let t=r.high.from;oO(e,{first:t,j:-1,lastOf:-2});
let n=o_(e,r.length+l,0,-1);n>=0&&oO(e,{first:t,j:n,lastOf:-2});return}(e=>{var r,l,o;let{X:i,V:a,t:u,g:s,from:f,run:h,kerf:p,ot:c,Dt:g,plankLength:d}=e;lj(i,h,{e:u.e,at:s.at[f],N:u.N}),a.length=0;
let m=e.yn.V[h.index];if(m>0){e.least=null!=(l=null==(r=e.se.J[h.index])?void 0:r[m])?l:0,lM(i,m)&&a.push(m);return}(e=>{let{X:t,se:n,run:r,V:l}=e,o=n.J[r.index],i=0;if(e.least=1/0,o){for(let n=0;n<
t.count;n++)for(let r=t.from[n];r<=t.to[n];r++)o[r]>=e.least||(e.least=o[r],i=r);oP(l,i)}})(e);for(let e=0;e<i.count;e++)oP(a,i.from[e]),oP(a,i.to[e]);i.count>0&&oP(a,(({X:e,t:t})=>{let n=lc(t.p,
e.count);return e.from[n]+lc(t.p,e.to[n]-e.from[n]+1)})(e));let w=null!=(o=e.known.get(h.rest))?o:[];for(let e=0;e<n(2,w.length);e++){let t=w[w.length<=2?e:lc(u.p,w.length)];lM(i,t)&&oP(a,t)}let k=f*
s.room;for(let e=k;e<k+s.A[f];e++){let r=s.lengths[e];if((1&s.gives[e])>0&&oP(a,(({count:e,from:r,to:l},o)=>{let i=0;for(let a=0;a<e;a++)r[a]<=o&&(i=t(i,n(o,l[a])));return i})(i,r-p-c)),(2&s.gives[
e])==0)continue;let l=r-p-g;oP(a,oT(i,h.rest-l,h.rest-1)),oP(a,oT(i,d+h.rest-l,d))}})(e);let u=e.g.at[e.from];for(let t of e.V){if(e.M=1e3*(({D:e,t:t,run:n},r,l)=>{let{e:o}=t,i=0;for(let t of(r[
n.index]=l,e.dn[n.index]))r[t]>0&&(i+=rG({e:o,at:r},n,o.runs[t],o.job.alignedDistance));return r[n.index]=0,i})(e,u,t),1===a.$[2*r.index]){oI(e,t,-3);continue}let n=t===i?-1:o_(e,t+o,1,-1);n>=0&&oI(
e,t,n),oA(e,n,t+o)||oI(e,t,-1)}})(m);if(0===(b=w.count))break;$.push(((e,t)=>{let n=()=>new a(t);return{run:e,before:n(),V:n(),Dr:n(),Wr:n()}})(e,b));for(let t=0;t<b;t++)((e,t,n,r,l)=>{let{best:o,g:
i,run:a,Jt:u,yn:s}=e,f=o.from[n],h={first:o.V[n],j:o.j[n],lastOf:o.lastOf[n]},{first:p,j:c,lastOf:g}=h;e.from=f;let[d,m]=[i.at[f],t.at[n]];for(let e of r)m[e]=d[e];m[a.index]=p,I===a.i.I&&(m[a.i.We]=
p);let w=i.st[f],k=e=>-3===e?-1:-1===e?w++:i.pn[f*i.room+e],y=k(c),x=-2===g?y:k(g);l.before[n]=f,l.V[n]=p,l.Dr[n]=y,l.Wr[n]=x;let $=a.o?0:r1(a,p)-s._[a.index];t.r[n]=i.r[f]+w-i.st[f]+$,t.st[n]=w,
t.waste[n]=o.waste[n],t.price[n]=o.price[n],t.Gt[n]=u[a.index]?0:W(i.Gt[f]^p,0x45d9f3b),oM(e.gn,e,i,f*i.room,a,h),oR(e,h),(({g:e,from:t,gn:n,lt:r,run:l},o,i,a,u,s,f)=>{let h=e.A[t],p=i*o.room;for(
let n=0;n<h;n++){if(n===a||n===u||1===r[n])continue;let l=t*e.room+n;o.lengths[p]=e.lengths[l],o.gives[p]=e.gives[l],o.values[p]=e.values[l],o.rows[p]=e.rows[l],o.pn[p++]=e.pn[l]}for(let e=0;e<
n.count;e++)1!==r[h+e]&&(o.lengths[p]=n.lengths[e],o.gives[p]=n.gives[e],o.values[p]=n.values[e],o.rows[p]=l.rowIndex,o.pn[p++]=n.Ur[e]?f:s);o.A[i]=p-i*o.room})(e,t,n,c,g,y,x)})(m,d,t,x[e.index],nh(
$));let r=m.g;m.g=d,d=L?g():r,(L=k[e.index]&&f.includes(e.rowIndex+1))&&v.set(e.rowIndex+1,{g:m.g,count:b,s:$.slice()}),yield}return e.s+=30*m.looks,v}(e,r,l,o,c,"front",[...d,m]),k=w.get(m),x=k&&((
e,t,n)=>{let{r,price:l}=t.g,o=-1;for(let e=0;e<t.count;e++)r[e]<=n&&(o<0||l[e]<l[o])&&(o=e);if(o<0)return;let i=(({runs:e},t)=>({at:new a(e.length),O:new a(2*e.length).fill(-1),r:t}))(e,r[o]);return(
({at:e,O:t},n,r,l,o)=>{(({s:e},t,n)=>{let r=t;for(let t=e.length-1;t>=0;t--){let{run:l,before:o,V:i,Dr:a,Wr:u}=e[t];n(l,i[r],a[r],u[r]),r=o[r]}})(n,r,(n,r,i,a)=>{let u=l(n);e[u]=r,I===n.i.I&&(e[
n.i.We]=r),t[2*u]=i<0?i:o(i),n.o||(t[2*u+1]=a<0?a:o(a))})})(i,t,o,e=>e.index,e=>e),i})(p,k,u);return x||0===w.size||!f?x:yield*f({t:e,at:r,se:l,yn:o,cs:c,fs:w})}var oW={M:24,cut:36,Ee:1},oD={M:60,
cut:24,Ee:1};function oq(e,r,l){let{e:u,p:s}=e,f=((e,t)=>{var n;let{runs:r,plankLength:l}=e.e,o=new i;for(let e of r)rZ(e)&&o.set(e.length,[...null!=(n=o.get(e.length))?n:[],e.index]);return{D:lg(e),
limit:t-e._,Le:new a(l+2),price:new a(l+3),Gr:new a(l+2),X:lS(),Fn:r.map(e=>{var t;return rZ(e)&&null!=(t=o.get(e.length))?t:[]}),front:[]}})(e,r);oV(f);for(let e=0;e<l&&u.runs.length>0;e++){var h;
e===o(.75*l)&&(e=>{let{t:t}=e.D;lH(t,oH(e.front).at),e.D=lg(t)})(f);let r=e>=l/2,i=((e,t)=>{let{e:n,p:r}=e.t,l=()=>n.runs[lc(r,n.runs.length)],o=l();if(!t||lc(r,100)>=30)return o;for(let t=0;t<6&&
0===ly(e,o);t++)o=l();return o})(f.D,r);if(!rQ(i)||rX(i))continue;let a=r?oD:oW;25>lc(s,100)&&(ly(h=f.D,i)>0||l$(h,i)>0)?((e,r,l)=>{let{D:o,Fn:i}=e,{e:a,at:u,p:s}=o.t,f=i[r.index],h=lc(s,t(1,
f.length)),p=-1,c=0,g=0;for(let e=0;e<n(f.length,40);e++){let t=f[(h+e)%f.length];if(u[t]===u[r.index])continue;let n=((e,t,n,r)=>{let l=()=>lx(e,t,n)*r.M+lv(e,t,n)*r.Ee,o=l();lJ(e.t,t,n);let i=lR(
e.t,t)+lR(e.t,n)===0?l()-o:0x40000000;return lJ(e.t,t,n),i})(o,r,a.runs[t],l);n>c||(g=n<c?1:g+1,(n<c||0===lc(s,g))&&(p=t),c=n)}if(p<0)return;let d=a.runs[p];oG(o,r,d,-1),lJ(o.t,r,d),oG(o,r,d,1)})(f,
i,a):((e,r,l)=>{let{D:i,X:a,price:u}=e,{t:s}=i,f=s.at[r.index];s.s+=s.e.plankLength,lm(i,r,-1),lK(s,r),lF(e.Le,s.depth,e.limit,s.e.plankLength),((e,r,l)=>{let{D:i,price:a}=e,u=i.t.e.plankLength;
a.fill(0);let s=rJ(i.t.e,r);for(let i of s?[r,s]:[r])(({D:e,price:r},l,o)=>{let{e:i,at:a}=e.t,u=i.plankLength,s=i.job.alignedDistance-1;for(let f of e.dn[l.index]){let e=i.runs[f];for(let i=e.x+a[f];
i<e.x+e.length;i+=u)oB(r,t(l.x+1,i-s)-l.x,n(l.x+l.length-1,i+s)-l.x,o,u)}})(e,i,l.M),(({D:e,price:t},n,r)=>{let{t:l,before:i,Qn:a}=e,{plankLength:u,job:s}=l.e,f=s.alignedDistance-1,h=e=>oB(t,e-n.x-f,
e-n.x+f,r,u);for(let e of a[n.index]){let t=i[e],r=lL(l,i[t]),a=lL(l,t),s=lL(l,e);n.index===e?h(2*a-r):n.index!==t?h(2*a-s):(h(o((r+s)/2)),h(o((r+s+u)/2)))}})(e,i,l.Ee);let f=0;for(let e=1;e<=u;
e++)f=f+a[e]|0,a[e]=f;a[u]-=l.cut,r.o||(a[r.rest]-=l.cut)})(e,r,l),lj(a,r,s),lc(s.p,100)>=80&&(u[f]=0x40000000);let h={price:0x40000000,ut:0};((e,t,n,r)=>{let{X:l,Le:o,D:i}=e,{plankLength:a,kerf:u}=
i.t.e,s=-t.rest-u;for(let i=0;i<l.count;i++){let u=l.from[i],f=l.to[i];u<t.rest?oK(e,{from:u,to:f,shift:a+s,Le:o[a]},n,r):oK(e,{from:u,to:f,shift:s,Le:0},n,r)}})(e,r,l.cut,h),lq(s,r,0===h.ut?f:e.Gr[
lc(s.p,h.ut)]),lm(i,r,1)})(f,i,a),oV(f)}return oH(f.front).at}function oK({price:e,Le:t,Gr:n,D:r},l,o,i){let{Zn:a,ends:u}=r,{from:s,to:f,shift:h}=l;for(let r=s;r<=f;r++){let s=r+h;if(t[r]+l.Le!==(s>
0?t[s]:0))continue;let f=e[r];a[r]>u[r]&&(f-=o),s>=0&&u[s]>a[s]&&(f-=o),f>i.price||(f<i.price&&(i.price=f,i.ut=0),n[i.ut++]=r)}}function oB(e,t,n,r,l){if(n<t)return;let o=((t-1)%l+l)%l+1,i=o+(n-t);
if(e[o]+=r,i<l){e[i+1]-=r;return}e[1]+=r,e[i-l+1]-=r}function oG(e,t,n,r){e.M+=r*lx(e,t,n),e.be+=r*lv(e,t,n)}function oV(e){let{M:t,c:n,be:r,t:l}=e.D;for(let l of e.front)if(l.M<=t&&l.c<=n&&(l.M<t||
l.c<n||l.be<=r))return;let o=e.front.filter(e=>e.M<t||e.c<n);e.front=[...o,{M:t,c:n,be:r,at:l.at.slice()}]}function oH(e){let t=e.reduce((e,{c:t})=>n(e,t),1/0);return nm(e.filter(({c:e})=>e<=o(1.05*
t)),e=>e.M)}var oU={H:[],K:new y(0)};function oJ(e,t){return{K:nw(t,()=>new y(e+1)),N:ll(e,0),X:lS(),Je:lE(),open:lE()}}function oZ(e,t,{direction:n,size:r,free:l}){let{e:o,p:i}=e;for(;t.length<r;){
let e=nh(t),r=o.De[e.index].filter(t=>o.runs[t].rowIndex===e.rowIndex+n&&l(o.runs[t]));if(0===r.length)break;t.push(o.runs[r[lc(i,r.length)]])}return t}function oX(e,r,l,o){let{e:i,at:a}=e,u=
i.plankLength,s=r.map(e=>a[e.index]);for(let e of r)a[e.index]=0;r.forEach((a,s)=>{e.s+=u*(0===s?1:3),lj(o.X,a,e),((e,n,r,l)=>{e.fill(1/0);for(let o=0;o<n.count;o++)for(let i=n.from[o];i<=n.to[o];
i++)e[i]=((e,{rest:n,fe:r,L:l},o)=>o>=n?e[o]-e[t(0,o-r)]:e[o]+e[l]-e[t(0,o+l-r)])(r,l,i)})(o.K[s],o.X,l,lN(i,a)),s>0&&((e,t,r,l)=>{let[o,i]=[t[l-1],t[l]],a=e.e.plankLength,u=e.N[i.index],s=r.K[l],f=
r.K[l-1],h=lo(f);if(0===h)s.fill(1/0);else if(2*u<=a)r.N.N!==u&&(r.N=ll(a,u)),li(r.N,{run:o,J:f,cn:h},i,s);else for(let t=1;t<=a;t++){let l=oQ(e,o,{other:i,at:t},r);s[t]+=((e,{from:t,to:r,count:l})=>
{let o=1/0;for(let i=0;i<l;i++)for(let l=t[i];l<=r[i];l++)o=n(o,e[l]);return o})(f,l)-f[h]}})(e,r,o,s)});let f=r.length-1,h=oY(e,o.K[f],{from:[1],to:[u],count:1});if(0===h)return r.forEach((e,t)=>{a[
e.index]=s[t]}),!1;for(let t=f;t>=0;t--)a[r[t].index]=h,t>0&&(h=oY(e,o.K[t-1],oQ(e,r[t-1],{other:r[t],at:h},o)));return!0}function oQ(e,t,n,r){let l=e.e.plankLength;return r.Je.count=0,r.open.count=
0,lP(r.Je,t,{...n,fe:e.N[t.index]-1,L:l}),lO(r.open,r.Je,1,l),r.open}function oY(e,t,n){let r=1/0,l=0,o=0;for(let i=0;i<n.count;i++)for(let a=n.from[i];a<=n.to[i];a++){let n=t[a];n>r||1/0===n||(l=n<
r?1:l+1,(n<r||0===lc(e.p,l))&&(o=a),r=n)}return o}function o0(e){let{e:t}=e,n=nk(t.runs.filter(t=>lR(e,t)>0).map(e=>e.room));if(0!==n.length){for(let r of n)((e,t)=>{let n=oJ(e.e.plankLength,
t.length);if(o1(e,t,n))return;let r=e.e.job.minStagger,i=0,a,u=t.length>200?l(r/50):1;for(;r-i>u||!a;){let l=o((i+r)/2);for(let n of t)e.N[n.index]=l;o1(e,t,n)?(i=l,a=e.at.slice()):r=l}for(
let n of t)e.N[n.index]=i;e.at.set(a)})(e,t.runs.filter(e=>e.room===r&&!e.o));lH(e,e.at)}}function o1(e,r,l){let i,u,{at:s,e:f}=e,h=new a(f.plankLength+2),p=e=>0===s[e.index];for(let a=0;a<(i=f,(u=
r).every(e=>I!==e.i.I&&o2(i,e,-1)&&o2(i,e,1))?1:t(1,n(12,o(1e7/(u.length*i.plankLength)))));a++){for(let e of r)s[e.index]=0;for(let n of r)I===n.i.I&&((e,n)=>{let{low:r,high:l}=n,o=t(0,r.to-r.from+
1),i=lc(e.p,o+t(0,l.to-l.from+1));lU(e,n,i<o?r.from+i:l.from+i-o)})(e,n);if(r.every(t=>{if(s[t.index]>0)return!0;let n=oZ(e,[t],{direction:-1,size:r.length,free:p}).reverse();return oX(e,oZ(e,n,{
direction:1,size:r.length,free:p}),h,l)}))return!0}return!1}function o2(e,t,n){return e.De[t.index].filter(r=>e.runs[r].rowIndex===t.rowIndex+n).length<=1}function o3(e){return{ce:new a(e+2),_n:
new a(e+2),Ht:new a(e+2),X:lS(),Kr:0}}function o4(e,t,{r:n,wn:r,z:l}){let{p:o}=e,i=-1,a=!0;for(let u=0;e.s<r&&u<l;u++){u%1e3==0&&t.ce.fill(1);let r=40>lc(o,100),l=r||a?((e,{ce:t,Ht:n},r)=>{let{depth:
l}=e,o=e.e.plankLength,i=0;for(let e=1;e<=o;e++)l[e]<=r||(t[e]++,n[i++]=e);return 0===i?0:n[lc(e.p,i)]})(e,t,n-e._):0;if(a&&0===l)return!0;let s=((e,t,n)=>{let{e:r,p:l,at:o}=e,{runs:i}=r,a=i[lc(l,
i.length)];for(let e=0;e<30;e++){if((0===t||((e,t,n,r)=>{let l=n-t.rest-e.kerf;return n>=t.rest?r<=n&&r>l:r<=n||r>l+e.plankLength})(r,a,o[a.index],t))&&rQ(a)&&a.index!==n)return a;a=i[lc(l,
i.length)]}for(;!rQ(a);)a=i[lc(l,i.length)];return a})(e,r?l:0,i);i=s.index,a=((e,t,n,r)=>{let{p:l}=e;return!(rZ(n)&&30>lc(l,100)&&((e,t)=>{let{e:n,at:r,p:l}=e;e.s+=200;for(let o=0;o<6;o++){let o=
n.runs[lc(l,n.runs.length)];if(!(o.rest!==t.rest||r[o.index]===r[t.index]||!rZ(o))){if(lJ(e,t,o),lR(e,t)+lR(e,o)===0)return!0;lJ(e,t,o)}}return!1})(e,n))&&(rZ(n)&&5>lc(l,100)?(((e,t,n,r)=>{let l=oZ(
e,[n],{direction:2*lc(e.p,2)-1,size:2+lc(e.p,2),free:rZ}),o=l.map(t=>e.at[t.index]),i=o9(e,t.ce,r);for(let t of l)lK(e,t);for(let n of(o8(e,t,r),null!=t.block||(t.block=oJ(e.e.plankLength,3)),oX(e,l,
t._n,t.block),l))lq(e,n,e.at[n.index]);if(!(o9(e,t.ce,r)<=i)){for(let t of l)lK(e,t);for(let[t,n]of l.entries())lq(e,n,o[t])}})(e,t,n,r-e._),!0):(o6(e,t,n,r),rX(n)?((({count:e,from:t,to:n})=>1===e&&
t[0]===n[0])(t.X)&&0===lc(l,8)&&(e=>{let{runs:t,plankLength:n}=e.e;for(let r of new $(t.filter(rX).map(e=>e.room))){let l=e.at.slice(),o=t.filter(e=>e.room===r&&!e.o);o1(e,o,oJ(n,o.length))||
e.at.set(l),lH(e,e.at)}})(e),!0):0===t.Kr))})(e,t,s,n)}return lZ(e)<=n}function o6(e,t,n,r){let l=r-e._;lK(e,n),o8(e,t,l),o5(e,t,n,r)}function o5(e,t,n,r){lq(e,n,rX(n)?((e,t,n,r)=>{let{e:l,at:o,p:i}=
e,{X:a,ce:u}=n;lj(a,t,e),0===a.count&&lI(a,t);let s=()=>{let e=lc(i,a.count);return a.from[e]+lc(i,a.to[e]-a.from[e]+1)};if(0===lc(i,4))return s();let f=((e,t,n)=>{let r=e.plankLength,l=[r,t.rest];
for(let o of(({Xe:e},{i:t})=>ew!==t.I&&Y!==t.I?[]:ew===t.I?e[t.pair].last:e[t.pair].first)(e,t)){let i=e.runs[o];if(0===n[o])continue;l.push(n[o],i.length);let a=i.o?i.length:r0(i,n[o],r);l.push(a<
t.rest?t.rest-a:t.rest-a+r)}return l})(l,t,o).filter(e=>lM(a,e));for(let e=0;e<24;e++)f.push(s());let h=o[t.index],p=1/0;for(let n of f){lq(e,t,n),e.s+=l.plankLength+200;let o=o9(e,u,r-e._);lK(e,t),
o>p||o===p&&0===lc(i,2)||(p=o,h=n)}return h})(e,n,t,r):((e,t,n)=>{let{e:r,p:l}=e,{X:o}=n;e.s+=r.plankLength+200,lj(o,t,e),0===o.count&&lI(o,t);let i={price:1/0,count:0},a=t.rest+r.kerf,u=
r.plankLength;for(let e=0;e<o.count;e++){let r=o.from[e],l=o.to[e];r<t.rest?o7(n,{from:r,to:l,shift:u-a,jr:n._n[u]},i):o7(n,{from:r,to:l,shift:-a,jr:0},i)}return n.Kr=i.price,n.Ht[lc(l,i.count)]})(e,
n,t))}function o8(e,{ce:t,_n:n},r){let{depth:l}=e,o=e.e.plankLength,i=r-1,a=0;for(let e=1;e<=o;e++)a=a+(t[e]&i-l[e]>>31)|0,n[e]=a}function o9({depth:e,e:t},n,r){let l=0;for(let o=1;o<=t.plankLength;
o++)e[o]>r&&(l+=(e[o]-r)*n[o]);return l}function o7(e,{from:t,to:n,shift:r,jr:l},o){let{_n:i,Ht:a}=e,{price:u,count:s}=o;for(let e=t;e<=n;e++){let t=e+r,n=i[e]+l-(t>0?i[t]:0);n>u||(n<u&&(u=n,s=0),a[
s++]=e)}o.price=u,o.count=s}function ie(e,t){let{e:n,p:r}=e,l=n.runs.filter(e=>!e.o&&rQ(e)&&!rX(e));for(let o=0;o<t;){let t=l.filter(t=>lR(e,t)>0);if(0===t.length)return n.runs.every(t=>0===lR(e,t));
let i=t[lc(r,t.length)],a=i,u=1/0,s=0;for(let t of l){if(t.rest!==i.rest||e.at[t.index]===e.at[i.index])continue;let n=((e,t,n)=>{let r=lR(e,t)+lR(e,n);lJ(e,t,n);let l=lR(e,t)+lR(e,n);return lJ(e,t,
n),l-r})(e,i,t);n>u||(s=n<u?1:s+1,(n<u||0===lc(r,s))&&(a=t),u=n)}lJ(e,i,a),o+=l.length,e.s+=50*l.length}return!1}function it(e,t){lV(e),ir(e,t),o0(e)}function ir(e,t){let{e:n,depth:r}=e,{_n:l}=t;
t.ce.fill(1);let o=n.runs.length*n.plankLength>4194304;for(let i=0;i<(o?1:3);i++)for(let o of n.runs)if(rQ(o)){e.at[o.index]>0&&lK(e,o);for(let e=1,t=0;e<=n.plankLength;e++)l[e]=t+=r[e];o5(e,t,o,
0)}}function*il(e,t,n,r){let{runs:l}=e.e,o=l.length<=100,a=o?25*l.length:1/0,u=o&&(e=>{var t;let n=new i;for(let{rest:r}of e)n.set(r,(null!=(t=n.get(r))?t:0)+1);return 2*e.filter(({rest:e})=>{var t;
return(null!=(t=n.get(e))?t:0)>1}).length>e.length})(l)?2:0;for(;!o4(e,t,{r:n,wn:r,z:a});){if(e.s>=r)return!1;((e,t,n,r)=>{let{e:l,N:o}=e,i=e.at.slice(),a=o.slice();if(r&&o.fill(0),lV(e),ir(e,t),r){
if(o4(e,t,n),o.set(a),ie(e,3e3))return!0;for(let r of(t.ce.fill(1),l.runs))rQ(r)&&lR(e,r)>0&&o6(e,t,r,n.r)}return o0(e),o.some((e,t)=>e<a[t])&&(o.set(a),lH(e,i)),!1})(e,t,{r:n,wn:r,z:40*l.length},u>
0)||u--,a*=1.5,yield}return!0}function*io(e,t,n,{s:r,z:l}){for(let o=0;o<12&&e.s<r;o++){if(!(yield*il(e,t,n,r)))return;let o=yield*o$(e,r8(e.e,e.at),l);if(o.$n)return o;it(e,t)}}function ii({job:e,
runs:t},r){let l=r.length-1,o=new i;return y.from(t,({o:t,length:i})=>{var a,u;if(!t)return 0;let s=i+e.kerf+(null!=(a=e.play)?a:0),f=null!=(u=o.get(i))?u:r[l];if(!o.has(i))for(let e=s;e<=l;e++)f=n(
f,r[e]-r[e-s]);return o.set(i,f),f})}function ia({hs:e,run:n,count:r},l,o){let{rest:i,fe:a,L:u}=e,s=0,f=u;for(let e=0;e<r;e++){let t=0===e?l:iu(n,f);0===t&&(t=iu(n,u),s++),null==o||o.push(t),f=t-a,!(
t>=i)&&(f+=u,s++)}let h=s+ +(t(0,f)<l);return r*n.ue+h}function iu({low:e,high:t},r){return t.from<=t.to&&r>=t.from?n(r,t.to):e.from<=e.to&&r>=e.from?n(r,e.to):0}var is=[4,6].map(e=>({most:e,offcut:
5e3})),ih=[{u:0,s:.04,ct:!1},{u:.1,s:.12,ct:!0},{u:.4,s:.3,ct:!1},{u:1,s:1,ct:!0}];function*ip(e,r,o){let u=yield*function*(e,r,o){let u=rH(e,r,te),s=((e,{Ae:r=1,Ze:o})=>{var i;let a,u,s,{runs:f,
plankLength:h}=e,p=n(6e7,28e5+6e4*f.length)*r,c=n(4+2*f.length,15e5/h)*r,g=n(15e4,800+800*f.length)*r,d=n(40,10*r),m=t(1,r),w=f.length>60?0:2*p,k=void 0===o?1:n(1,o/(u=e.kerf===e.job.kerf?0:p+300*g,
s=p+(c*h+300*g)+u+5*d*600*f.length+m*(lh(a=lr(i=e.job))*lf(a)*i.plankLength*2)+2*w,e.runs.every(rQ)?s:2*s));return{s:p*k,Vr:l(c*k),z:l(g*k),ways:l(d*k),Hr:void 0!==o||f.length>100?0:10*d,ys:m*k,bn:w*
k}})(u,o),f=lD(u),h=ls(e),{at:p,count:c,u:g}=yield*function*(e,r,o){let{job:u,plankLength:s}=e.e,f=(e=>{let t=e.runs.filter(rQ),r=t[0];if(!r||!t.every(e=>e.length===r.length&&!rX(e)&&!e.o))return;
let l={hs:lN(e,r),run:r,count:t.length},o=0,i=1/0;for(let t=1;t<=e.plankLength;t++){if(!(({low:e,high:t},n)=>n>=e.from&&n<=e.to||n>=t.from&&n<=t.to)(r,t))continue;let e=ia(l,t);e<i&&(o=t),i=n(i,
e)}if(0===o)return;let a=[];return{r:ia(l,o,a),ends:a}})(e.e),h=o3(s);it(e,h);let p=f&&e.e.kerf===u.kerf?f.r:0,c={at:e.at.slice(),count:lZ(e),u:p},g=()=>{lZ(e)>=c.count||(c.at=e.at.slice(),c.count=
lZ(e))};for(let[u,s]of(yield,ih.entries())){1===u&&f&&c.count>f.r&&((e,t)=>{let n=e.e.runs.filter(rQ),r=[...t.ends].sort((e,t)=>e-t),o,i=1/0;for(let t=1;t<=60&&i>0;t++){((e,t,n,r)=>{let l=n.map(()=>!
1),o=0;for(let i of t){for(;l[o];)o=(o+1)%n.length;l[o]=!0,lU(e,i,n[o]),o=(o+r)%n.length}})(e,n,r,l(t*n.length/61));let a=ng(n,t=>lR(e,t));a>=i||(i=a,o=e.at.slice())}o&&e.at.set(o);let a=ie(e,2e4);
return lH(e,e.at),a})(e,f)&&g();let p=s.u*r.ys;c.count>c.u&&(c.u=t(c.u,o.Xn({Me:c.count,Ae:p}))),yield,lH(e,c.at);let d=r.s*s.s;for(;c.count>c.u&&(yield*il(e,h,c.count-1,d));)g();s.ct&&((e,r,l,o)=>{
let{e:u}=e;if(r.count===r.u||0===o)return;let s=l.Cr();if(!s)return;let f=lD(u);for(;r.count>r.u;){let e=((e,r,{r:l,wn:o})=>{let{e:u}=e,s=ng(u.runs,e=>rY(e)?e.ue:0);lV(e),e.N.fill(u.job.minStagger);
let f={t:e,s:((e,{runs:r,$r:l})=>{let o=new i;r.runs.forEach((t,n)=>{o.set(e.ee[t.rowIndex][t.E],l.It(n))});let a=new i,u=[...o.keys()].map(t=>e.runs[t]),s=e.runs.filter(e=>!o.has(e.index)),f=
s.filter(e=>e.o).sort((e,t)=>t.length-e.length||e.index-t.index),h=[...u,...s.filter(e=>!e.o),...f].filter(rQ),p=new i(h.map((e,t)=>[e.index,t]));h.forEach(({i:e},t)=>{I===e.I&&p.set(e.We,t)});let c=
e.runs.map(n=>e.De[n.index].reduce((e,n)=>{var r;return t(e,null!=(r=p.get(n))?r:0)},0));return h.map((t,i)=>{var u;let s=t.o&&!r.Et.has(t.rowIndex);s&&!a.has(t.length)&&a.set(t.length,(({
plankLength:e,kerf:t},r,l)=>{let o=new y(e+1).fill(1/0),i=l.length-1;for(let a=r.rest;a<=e;a++)o[a]=l[n(a+t,i)]-l[a-r.rest];return o})(e,t,l.Ge));let f=e.runs.filter(e=>{var t;return(null!=(t=p.get(
e.index))?t:0)<i&&c[e.index]>=i}),g=h[i-1];return{run:t,J:null!=(u=o.get(t.index))?u:s?a.get(t.length):void 0,open:f.map(e=>e.index),Jr:(null==g?void 0:g.length)===t.length&&[g,t].every(e=>e.o&&!rX(
e))}})})(u,r),r:l,limit:l-s,wn:o,ds:e.s,X:lS(),Le:new a(u.plankLength+2),failed:new $,jt:0,Vt:!1};return f.limit>=0&&function e(r,l,o,i){let{t:a,s:u,failed:s}=r;if(l===u.length)return lZ(a)<=r.r;
let f=(({t:e,s:t},n)=>{let{at:r}=e,{runs:l}=e.e,o=[];for(let e=0;e<n;e++){let{run:n}=t[e];rX(n)||o.push(`${n.rest}:${r[n.index]}`)}let i=t[n].open.map(e=>r[e]),a=l.filter(rX).map(e=>r[e.index]),u=t[
n].Jr?r[t[n-1].run.index]:0;return`${n}|${i}|${a}|${u}|${o.sort()}`})(r,l),{H:h,K:p}=s.has(f)?oU:((e,r,l)=>{let{t:o,X:i}=e,{run:a,J:u}=e.s[r],{plankLength:s}=o.e;lF(e.Le,o.depth,e.limit,s),o.s+=s;
let f=a.o?(({t:e,s:t},n)=>{let{plankLength:r,kerf:l}=e.e,{run:o,Jr:i}=t[n],a=i?e.at[t[n-1].run.index]:0,u=new $([o.rest]);for(let r=0;r<n;r++)u.add(e.at[t[r].run.index]+l+o.rest);return rX(o)&&u.add(
r),[...u].filter(e=>e<=r&&e>=a)})(e,r):((e,t,n)=>{let r=[];lj(e,t,n);for(let t=0;t<e.count;t++)for(let n=e.from[t];n<=e.to[t];n++)r.push(n);return r})(i,a,o),h=new y(s+1);if(u){let e=1/0;if(a.o)for(
let t of u)e=n(e,t);else for(let t of f)e=n(e,u[t]);for(let t of f)h[t]=u[t]-e}return{H:f.filter(n=>h[n]<=l&&(rX(a)||(({t:e,Le:n},r,l)=>{let{plankLength:o,kerf:i}=e.e,a=l-r.rest-i;return l>=r.rest?n[
l]===n[t(0,a)]:0===n[l]&&n[o]===n[t(0,a+o)]})(e,a,n))).sort((e,t)=>h[e]-h[t]||e-t),K:h}})(r,l,o);for(let t of(0===h.length&&(r.jt+=i),h)){if(r.Vt||(r.Vt=(({t:e,ds:t,wn:n,jt:r})=>{let l=e.s-t;
return l>=n||l>=1e5&&l>r*n})(r)),r.Vt)return!1;let{run:n}=u[l];if(a.s+=n.rest,lq(a,n,t),!rX(n)||lZ(a)<=r.r){if(e(r,l+1,o-p[t],i/h.length))return!0}else r.jt+=i/h.length;lK(a,n),lU(a,n,
0)}return s.size<5e4&&s.add(f),!1}(f,0,r.fn(l),1)?eK:(lV(e),f.Vt?j:v)})(f,s,{r:r.count-1,wn:o});if(eK===e?(r.at=f.at.slice(),r.count=lZ(f)):v===e&&0===s.runs.Et.size&&u.kerf===u.job.kerf&&(r.u=
r.count),eK!==e)break}e.s+=f.s})(e,c,o,r.bn),yield}return c}(f,s,h),d={t:f,G:s,pe:{at:p,shared:r8(u,p),most:0,ln:0,c:0,$n:!0},r:c,u:g,Yr:h};if(u.kerf===e.kerf||c===g||!ig(d))return d;let m={r:c,u:g,
s:s.s,z:s.z},w=yield*function*(e,t,n){let r,l=lD(e),o=o3(e.plankLength);lH(l,t);for(let e=n.r-1;e>=n.u&&l.s<n.s;e--){let t=yield*io(l,o,e,n);if(!t)break;r={t:l,pe:t,r:e},lH(l,t.at)}return r}(rH(e,r),
p,m);return w?{...w,G:s,u:g,Yr:h}:d}(e,r,o);return ig(u)?yield*function* e(t){let{t:n,G:r,pe:l,r:o,u:i}=t;if(o===i)return t;let a={r:o-1,width:r.ways,bn:is},u=yield*oz(n,l.at,ic(t),a);if(!u)return t;
let{at:s,shared:f}=u;return yield*e({...t,pe:{...l,at:s,shared:f},r:u.r,qr:!0})}(u):u}function ic({t:e,Yr:t}){var r,l,o;return r=e.e,null!=(o=(l=t.Cr())&&((e,{runs:t,$r:n,fn:r})=>{let l=e.runs.map((
)=>{});if(t.runs.forEach((t,r)=>{l[e.ee[t.rowIndex][t.E]]=n.It(r)}),!e.runs.every(e=>!rQ(e)||(e.o?!t.Et.has(e.rowIndex):void 0!==l[e.index])))return;let{plank:o,Ge:i}=n;return{plank:o,Me:i,J:l,walls:
ii(e,i),fn:r}})(r,l))?o:(e=>{let t,r,l,o,{kerf:a,play:u=0}=e.job,s=e.plankLength+a+u,f=y.from({length:s+1},(e,t)=>t);return t=ii(e,f),r=new i,l=0,o=e.runs.map(o=>{var i;if(!rQ(o)||(l+=o.ue*s+t[
o.index],o.o))return;let a=`${o.rest} ${0===o.ue}`,u=null!=(i=r.get(a))?i:(({plankLength:e,job:t},{rest:r,low:l,high:o},i,a)=>{let{kerf:u}=t,s=new y(e+1).fill(1/0);for(let t=l.from;t<=l.to;t++)s[t]=
i+a[t+u]-a[e-r+t];for(let e=o.from;e<=o.to;e++)s[e]=a[e+u]-a[e-r];return{K:s,least:s.reduce((e,t)=>n(e,t),1/0)}})(e,o,s,f);return r.set(a,u),l+=u.least,u.K}),{plank:s,Me:f,J:o,walls:t,fn:e=>e*s-l}})(
r)}function ig({t:e}){return e.N.every(t=>t>=e.e.job.minStagger)}var id=[2,3,5,8].map(e=>({most:e,offcut:3e3})),im=[3,5,8,8].map(e=>({most:e,offcut:1e3}));function iw({t:e,r:t,u:n}){var r;return(
null!=(r=e.e.job.play)?r:0)>0&&t>n}function*ik(e,t,n){let{t:r,G:l,pe:o}=e,i={r:e.r+t,...n},a=yield*oz(r,o.at,ic(e),i);if(!a)return;lH(r,a.at);let u=i.r-a.r;return yield*ox(r,a.shared,{z:l.z,spare:u,
mn:!0})}function iy(e,t){var n;if(t.P.length>0)return t;let l=t.rows.flatMap(({runs:e})=>e.flat().map(({plank:e})=>e)),o=new i;for(let e of l)o.set(e,(null!=(n=o.get(e))?n:0)+1);let a=({plank:e})=>
1===o.get(e),u=[...t.rows],s={...t,rows:u},p=(t,n,l)=>[t-n,t+n].filter(n=>{var r;return(null==(r=e.rows[n])?void 0:r.room)===e.rows[t].room}).flatMap(t=>rO(e,s,t)).flatMap(n=>rO(e,s,t).filter(e=>r(e-
n)<l)).length;return u.forEach((t,n)=>{t.runs.forEach((t,r)=>{let[l,o]=[t[0],nh(t)];if(h!==l.from||m!==o.from||!a(l)||!a(o))return;let[i,s]=[u[n],p(n,2,e.alignedDistance)],c={...l,from:f,plank:
o.plank},g=[{...o,plank:l.plank},...t.slice(1,-1),c];u[n]={runs:i.runs.map((e,t)=>t===r?g:e)},(p(n,1,e.minStagger)>0||p(n,2,e.alignedDistance)>s)&&(u[n]=i)})}),s}function ix(e){for(;;){let{done:t,
value:n}=e.next();if(t)return n}}function i$(e,t={}){return ix(iv(e,t))}function*iv(e,n={}){return rD(e,((e,t,{bs:n=!0})=>n?iy(e,t):t)(e,(yield*function*(e,n){var r;let l,o,i,{Ae:a=1}=n;if(!(a>0&&a<
1/0))throw C(`The effort must be above 0, found ${a}.`);let u=yield*ip(e,e7,n),s=yield*iL(u,n);if(0===s.P.length&&u.r===u.u||u.t.e.runs.every(rQ))return s;let f=yield*ip(e,"laid freely",n);return l=
0>((r=yield*iL(f,n)).P.length-s.P.length||r.f-s.f||ib(e,r)-ib(e,s))?r:s,i=(o=t(...[s,r].filter(e=>e.P.length===l.P.length).map(e=>e.u)))===l.f?M:j,{...l,u:o,re:i,s:s.s+r.s}}(e,n)),n))}function ib(e,
t){return rq(e,t).Ue.most}function*iL(e,{zt:n=!0,qt:r=!0,Yt:l,Ae:o=1,Nn:i}){var a;let{t:u,r:s}=e,{e:f}=u,h=t(0,(null!=(a=null==l?void 0:l(s))?a:s)-s),p=n||iw(e),c=l?3:5,g=function*(t){return p?
yield*function*(e,t,n){var r;let{G:l}=e,{zr:o,qt:i,Nn:a}=n,u=i&&ig(e),s=u?yield*function*(e,t,n){let{t:r,G:l,pe:o,qr:i}=e;if(i&&0===t)return lH(r,o.at),yield*ox(r,o.shared,{z:l.z,spare:0,mn:!0});
let a=yield*ik(e,t,{width:l.ways,bn:id,pin:null==n?void 0:n.pin});return a&&!i&&(({t:e,pe:t,r:n,G:r},{c:l})=>!(e.e.runs.length<=100)&&(lH(e,t.at),e.at.set(oq(e,n,r.Vr)),l>1.15*lg(e).c))(e,a)?void 0:
a}(e,t,a):void 0;if(s&&s.most<=3)return s;let f=e.t.e.runs.length>100,h=a&&u&&f&&(!s||s.most>o)?yield*a.gs(e,e.r+t,n):void 0;if(h&&h.most<(null!=(r=null==s?void 0:s.most)?r:1/0))return h;let p=
yield*function*(e,t){let{t:n,G:r,pe:l}=e,o=(({t:e,G:t,pe:n,r,qr:l})=>{var o;let{e:i}=e;return lH(e,n.at),l||i.kerf<i.job.kerf+(null!=(o=i.job.play)?o:0)?n.shared:(e.at.set(oq(e,r,t.Vr)),r8(i,
e.at))})(e);return yield,iw(e)||(({O:e,i:t})=>{let n=e.filter(e=>e>=0);return t.length>0||new $(n).size<n.length})(o)?yield*ox(n,o,{z:r.z,spare:t}):{...l,at:n.at.slice(),shared:o}}(e,t),c=s&&s.most<=
p.most?s:p;if(!u||!a||0===l.Hr||c.most<=o)return c;let g=c.shared.i.length,d=[...im,{most:c.most-1,offcut:1e3}].filter(({most:e})=>e+g<=c.most),{Kt:m,pin:w}=a,k=yield*ik(e,t,{width:l.Hr,bn:d,Kt:m,
pin:w});return k&&k.most<c.most?k:c}(e,t,{zr:c,qt:r,Ae:o,Nn:i}):e.pe},d=yield*g(0),m=0,w=l&&p?d.shared.i.length>0?h:h+3:0;for(let e=h;e<=w&&d.most>3*(e>h);e++){let t=0===e?d:yield*g(e);t.most>=
d.most||(d=t,m=e)}yield;let k=r6(f,d.at,d.shared.O),{rows:y,f:x}=k.f>s+m?r6(f,e.pe.at,e.pe.shared.O):k;yield;let v=ln(f.job,y),b=v.length>0?((e,t={})=>ls(e).Xn(t))(f.job,{Me:0}):e.u;return{rows:y,f:
x,u:b,re:b===x?M:j,s:u.s,P:v}}function iE(e,n,r,i,a){var u;let s,f=(s=t(1,l(n/(u=i.markingStep))),{unit:n/s,markingStep:u,plankLength:n,Xt:s}),h=e.flatMap((e,n)=>e.map(e=>{let r;return r=e.runs.map(
e=>({x:o(e.x0/f.unit),length:t(1,o((e.x1-e.x0+2)/f.unit))})),{room:n,width:l(e.width/f.unit),runs:r}})),p=e.every(e=>e.every(e=>e.runs.every(e=>e.x0%f.unit==0))),c=f.unit===f.markingStep?0:
f.markingStep,g=(e,t)=>l((e+t)/f.unit);return{job:{plankLength:f.Xt,plankWidth:o(r/f.unit),kerf:g(i.kerf,2*c),play:g(i.play,0),minPiece:g(i.minPiece,c),minStagger:0===i.minStagger?0:g(i.minStagger,(
p?0:f.unit)+c),alignedDistance:g(i.alignedDistance,0),rows:h,ripPairs:a?((e,t,n)=>{let r=[],l=0;for(let o of e){let e=l+o.length-1;o.length>1&&o[0].width+nh(o).width+n<=t&&r.push([l,e]),l=e+
1}return r})(e,r,i.kerf):[]},ke:f}}function iS(e,t,n){return iE([e.map(e=>({width:0,runs:[{x0:0,x1:e}]}))],t,0,n,!1)}function iM(e,r,l,o){return r.map((r,i)=>r.runs.map((r,a)=>((e,r,l)=>{let o=e.map(
e=>e===l.Xt?l.plankLength:tP(e*l.unit,l.markingStep)),i=o.length-1;if(e[i]===l.Xt)return o.map(tL);let a=nd(o.slice(0,i)),u=t(l.markingStep,tP(r-a+2,l.markingStep));return o[i]=n(u,tP(l.plankLength-
1,l.markingStep)),o.map(tL)})(e.rows[l+i].runs[a].map(e=>e.length),r.x1-r.x0,o)))}function ij(e,t={},r=iv){return ix(function*(e,t,r){let{C:o,rules:i,start:a}=e[0].read,u=e.map(e=>e.layout.rows),{
job:s,ke:f}=iE(u,tS(o.Vn.length),o.plankWidth,i,a.reuseStrips),h="easy"===a.aim?e=>((e,{planksPerBox:t},{spare:n})=>null===t?e:l((e+n)/t)*t-n)(e,o,i):void 0,p=yield*r(s,{Yt:h,...t},f);yield;let c=((
e,{r:t})=>{let r=e.map(e=>e.map(e=>[...e]));for(let{source:e,rowIndex:l,E:o,ze:i}of t.flatMap(({i:e})=>e)){if(null===e)continue;let t=r[l][o];t[i]=n(t[i],r[e.rowIndex][e.E][e.ze])}return r})(iM(p,
u.flat(),0,f),rq(s,p)),g=((e,t,n)=>{let{C:r,rules:l}=t[0].read,o=t.flatMap((e,t)=>e.layout.rows.map(({width:e,runs:n})=>({room:t,width:e,runs:n})));return{plankLength:r.plankLength,plankWidth:
r.plankWidth,kerf:l.kerf,play:l.play,minPiece:l.minPiece,minStagger:l.minStagger,alignedDistance:l.alignedDistance,rows:o.map((e,t)=>({room:e.room,width:e.width,runs:e.runs.map((e,r)=>({x:e.x0,
length:nd(n[t][r])}))})),ripPairs:e.ripPairs}})(s,e,c);yield;let d=iI(p,g,c);yield;let m=[0];for(let e of u)m.push(nh(m)+e.length);return{U:e,job:s,plan:p,ke:f,ft:g,xe:d,ledger:rq(g,d),en:m}}(e,t,
r))}function iI(e,t,n){let r=e.rows.map((e,t)=>({runs:e.runs.map((e,r)=>e.map((e,l)=>({...e,length:n[t][r][l]})))}));return rD(t,{...e,rows:r,P:ln(t,r)})}function iA(e,t,n){let r=(t.x-e.x)*(n.y-e.y)-
(t.y-e.y)*(n.x-e.x);return r>0?1:r<0?-1:0}function i_(e,t){return e.x===t.x&&e.y===t.y}function iP(e,t){return Math.hypot(t.x-e.x,t.y-e.y)}function iT(e){let t=e[0],n=0;for(let r=1;r+1<e.length;r++){
let l=e[r],o=e[r+1];n+=(l.x-t.x)*(o.y-t.y)-(o.x-t.x)*(l.y-t.y)}return n/2}function iO(e){return ng(e,e=>iT(e))}function iC(e){let r=e.flat();if(0===r.length)return{x0:0,y0:0,x1:0,y1:0};let{x:l,y:o}=
r[0],i=l,a=o;for(let{x:e,y:u}of r)l=n(l,e),o=n(o,u),i=t(i,e),a=t(a,u);return{x0:l,y0:o,x1:i,y1:a}}function iR(e,r,l){return l.x>=n(e.x,r.x)&&l.x<=t(e.x,r.x)&&l.y>=n(e.y,r.y)&&l.y<=t(e.y,r.y)&&0===iA(
e,r,l)}function iN(e){let t=e.length,n=e.findIndex((n,r)=>i_(n,e[(r+1)%t]));if(n>=0)return[n,n];for(let n=0;n<t;n++){let o=e[n],i=e[(n+1)%t],a=e[(n+2)%t];if(iR(o,i,a)||iR(i,a,o))return[n,(n+1)%t];
for(let a=n+2;a<t-(0===n);a++){var r,l;if(r=e[a],l=e[(a+1)%t],iA(o,i,r)*iA(o,i,l)<0&&iA(r,l,o)*iA(r,l,i)<0||iR(o,i,r)||iR(o,i,l)||iR(r,l,o)||iR(r,l,i))return[n,a]}}return null}function iz(e){let t=
e.filter(e=>iT(e)>0),n=e.filter(e=>0>iT(e));if(0===n.length)return t.map(e=>({h:e,Fe:[]}));let r=n.map(e=>t.filter(t=>e.every(e=>((e,t)=>{let n=0;for(let r of e)for(let e=0;e<r.length;e++){let l=r[
e],o=np(r,e);if(iR(l,o,t))return!0;l.y<=t.y&&o.y>t.y&&iA(l,o,t)>0&&(n+=1),o.y<=t.y&&l.y>t.y&&0>iA(l,o,t)&&(n-=1)}return 0!==n})([t],e))).reduce((e,t)=>e&&iT(e)<=iT(t)?e:t,void 0));return t.map(e=>({
h:e,Fe:n.filter((t,n)=>r[n]===e)}))}function iF(e,r){if(e.length<64)return()=>e;let l=e.map(r),i=l.reduce((e,t)=>n(e,t[0]),1/0),a=l.reduce((e,n)=>t(e,n[1]),-1/0),u=n(e.length,256),s=t(1,(a-i)/u),f=
e=>n(u-1,t(0,o((e-i)/s))),h=nw(u,()=>[]);return e.forEach((e,t)=>{let n=f(l[t][1]);for(let r=f(l[t][0]);r<=n;r++)h[r].push(e)}),e=>h[f(e)]}function iW(e,t,n,r,l){return iD(e,t)?{a:e,b:t,first:n,
second:r,source:l}:{a:t,b:e,first:-n,second:-r,source:l}}function iD(e,t){return e.y<t.y||e.y===t.y&&e.x<t.x}function iq(e,t){return iD(e.a,t)&&iD(t,e.b)}function iK(e,t,n){i_(t,e.a)||i_(t,e.b)||
n.push(t)}function iB(e,t){return iV(e,t,(e,t)=>e&&!t)}function iG(e,t){return iV(e,t,(e,t)=>e&&t)}function iV(e,l,o){let a=(e=>{let l=e;for(let e=0;e<16;e++){let{c:e,ws:o}=(e=>{let r=e.map(()=>[]),
l=[],o=e.map((e,t)=>t).sort((t,n)=>e[t].a.y-e[n].a.y);for(let i=0;i<o.length;i++){let a=o[i],u=e[a],s=n(u.a.x,u.b.x),f=t(u.a.x,u.b.x);for(let t=i+1;t<o.length;t++){let n=o[t],i=e[n];if(i.a.y>
u.b.y)break;if(i.a.x>f&&i.b.x>f||i.a.x<s&&i.b.x<s)continue;let h=((e,t,n,r)=>{let l=iA(e.a,e.b,t.a),o=iA(e.a,e.b,t.b);if(l*o>0)return null;let i=iA(t.a,t.b,e.a),a=iA(t.a,t.b,e.b);if(i*a>
0)return null;if(l*o<0&&i*a<0){let l=((e,t)=>{let n=e.b.x-e.a.x,r=e.b.y-e.a.y,l=t.b.x-t.a.x,o=t.b.y-t.a.y,i=((t.a.x-e.a.x)*o-(t.a.y-e.a.y)*l)/(n*o-r*l);return{x:tL(e.a.x+i*n),y:tL(e.a.y+i*r)}})(e,t);
return iK(e,l,n),iK(t,l,r),0===iA(e.a,e.b,l)&&0===iA(t.a,t.b,l)?null:l}return 0===l&&iq(e,t.a)&&n.push(t.a),0===o&&iq(e,t.b)&&n.push(t.b),0===i&&iq(t,e.a)&&r.push(e.a),0===a&&iq(t,e.b)&&r.push(e.b),
null})(u,i,r[a],r[n]);h&&l.push(h)}}return{c:r,ws:l}})(l);if(o.length>0&&((e,t,n)=>{let l=new i([...t,...e.flatMap(({a:e,b:t})=>[e,t])].map(e=>[`${e.x} ${e.y}`,e])),o=iF(e.map((e,t)=>t),t=>[e[t].a.y,
e[t].b.y]);for(let t of l.values())for(let l of o(t.y))(({a:e,b:t},{x:n,y:l})=>{if(l<e.y||l>t.y||n<e.x&&n<t.x||n>e.x&&n>t.x)return!1;let o=t.x-e.x,i=t.y-e.y;return 2*r(o*(l-e.y)-i*(n-e.x))<r(o)+r(
i)})(e[l],t)&&iK(e[l],t,n[l])})(l,o,e),l=(e=>{e.sort((e,t)=>e.a.y-t.a.y||e.a.x-t.a.x||e.b.y-t.b.y||e.b.x-t.b.x);let t=[];for(let n of e){let e=nh(t);if(e&&i_(e.a,n.a)&&i_(e.b,n.b)){let r=e.first+
n.first;t[t.length-1]={...e,first:r,second:e.second+n.second}}else t.push(n)}return t.filter(e=>0!==e.first||0!==e.second)})(l.flatMap((t,n)=>0===e[n].length?[t]:((e,t)=>{let{a:n,b:r,first:l,second:
o,source:i}=e,a=e=>(e.x-n.x)*(r.x-n.x)+(e.y-n.y)*(r.y-n.y),u=[n,...t.sort((e,t)=>a(e)-a(t)),r],s=[];for(let e=0;e+1<u.length;e++)i_(u[e],u[e+1])||s.push(iW(u[e],u[e+1],l,o,i));return s})(t,e[n]))),
0===o.length)return l}throw Error(`Internal: ${e.length} edges do not settle`)})([...iH(e,1,0),...iH(l,0,1)]),u=[],s=iF(a,({a:e,b:t})=>[e.y,t.y]),f=iF(a,({a:e,b:r})=>[n(e.x,r.x),t(e.x,r.x)]);for(
let e of a){let{a:t,b:n}=e,[r,l]=((e,t)=>{let n=e.a.y===e.b.y,r={x:e.a.x+e.b.x,y:e.a.y+e.b.y},l=0,o=0;for(let i of t){if(i===e)continue;let t=n?(({a:e,b:t},n)=>{let[r,l]=e.x<t.x?[e,t]:[t,e];return 2*
r.x>n.x||2*l.x<=n.x||!((l.x-r.x)*(n.y-2*r.y)>(l.y-r.y)*(n.x-2*r.x))?0:r===e?1:-1})(i,r):(({a:e,b:t},n)=>2*e.y>n.y||2*t.y<=n.y||(t.x-e.x)*(n.y-2*e.y)<(t.y-e.y)*(n.x-2*e.x)?0:1)(i,r);l+=t*i.first,o+=t*
i.second}return[l,o]})(e,t.y===n.y?f((t.x+n.x)/2):s((t.y+n.y)/2)),i=o(0!==r,0!==l),a=o(r+e.first!==0,l+e.second!==0);if(a===i)continue;let[h,p]=a?[e.a,e.b]:[e.b,e.a];u.push({from:h,to:p,source:
e.source})}return(e=>{let t=new i;for(let n of e){let e=iU(n.from),r=t.get(e);r?r.push(n):t.set(e,[n])}let n=new $,r=[];for(let l of e){if(n.has(l))continue;let e=[];for(let r=l;!n.has(r);r=((e,t)=>{
let n=t.get(iU(e.to));if(1===n.length)return n[0];let r=t=>1+iA(e.to,e.from,t);return n.reduce((t,n)=>{let l=r(n.to)-r(t.to);return l<0||0===l&&0>iA(e.to,n.to,t.to)?n:t})})(r,t))n.add(r),e.push(r);
let o=(e=>{let t=e.filter((t,n)=>nc(e,n).source!==t.source).map(e=>e.from),n=e=>t[(e+t.length)%t.length];return t.filter((e,t)=>0!==iA(n(t-1),e,n(t+1)))})(e);o.length>=3&&0!==iT(o)&&r.push(
o)}return r})(u)}function iH(e,t,n){let r=[];for(let l of e)l.forEach((e,o)=>{let i=np(l,o);i_(e,i)||r.push(iW(e,i,t,n,{from:e,to:i}))});return r}function iU(e){return`${e.x} ${e.y}`}function iJ(e,
t){return t>0?l(e):t<0?o(e):tL(e)}function iZ(e,t,n){let r=o(e/t);return n>0&&e>r*t?r+1:r}function iX(e,t,n){return iQ(iQ(e,{x:t},1),{x:n},-1)}function iQ(e,t,n){let r=[],l=!1;for(let o of e){let e=
o.map(e=>n*("x"in t?e.x-t.x:e.y-t.y));if(e.every(e=>e>=0))r.push(o),e.includes(0)&&0>iT(o)&&(l=!0);else for(let n of((e,t,n)=>{let r=e.length,l=t.findIndex(e=>e<=0),o=[],i=[];for(let a=0;a<r;a++){
let u=(l+a)%r,s=(u+1)%r;t[u]>0&&i.push(e[u]),t[u]<=0&&t[s]>0&&i.push(iY(e[u],e[s],n)),t[u]>0&&t[s]<=0&&(i.push(iY(e[u],e[s],n)),o.push(i),i=[])}return o.map(i0)})(o,e,t)){let e=iT(n);0!==e&&r.push(
n),e<0&&(l=!0)}}return l?iV(r,[],e=>e):r}function iY(e,t,n){var l,o;let i,a,u,s,f;return"x"in n?{x:n.x,y:(l=n.x,i=t.x-e.x,a=(t.y-e.y)*(t.x>e.x?l-e.x:e.x-l),e.y+iZ(a,r(i),i))}:{x:(o=n.y,s=r(u=e.y-
t.y),f=(t.x-e.x)*(t.y>e.y?o-e.y:e.y-o),e.x+iZ(f,s,u)),y:n.y}}function i0(e){return e.filter((t,n)=>!i_(t,nc(e,n)))}function i1({cosine:e,dt:t,left:n,low:r},{x:l,y:o}){return{x:tL(l*e+o*t)-n,y:tL(o*e-
l*t)-r}}function i2(e,t){let n,r,l=t.map(t=>t.map(t=>i1(e,t)));return(({degrees:e})=>e%90==0)(e)?l:(n=i4(l,e=>e.y),r=i4(l,e=>e.x),l.map(e=>e.map(({x:e,y:t})=>{var l,o;return{x:null!=(l=r.get(e))?l:e,
y:null!=(o=n.get(t))?o:t}})).filter(e=>0!==iT(e)))}function i3(e){let t=(e%360+360)%360;if(t%90==0)return{degrees:t,cosine:[1,0,-1,0][t/90],dt:[0,1,0,-1][t/90]};let n=t*ey/180;return{degrees:t,
cosine:ex(n),dt:eB(n)}}function i4(e,t){let n=new $;for(let l of e)l.forEach((e,o)=>{let i=np(l,o);r(t(e)-t(i))>2||(n.add(t(e)),n.add(t(i)))});let l=new i,o=-1/0,a=-1/0;for(let e of[...n].sort((e,
t)=>e-t))e-a>2&&(o=e),l.set(e,o),a=e;return l}function i6(e,t,n){let[l,o,i,a]=[t.x-e.x,t.y-e.y,n.x-t.x,n.y-t.y];return 180*r(tt(l*a-o*i,l*i+o*a))/ey}function i5(e){return e.map(e=>e.map(({x:e,y:t})=>
({x:t,y:e})).reverse())}function i8(e,t){return 2*r(t)>=r(e)}function i9(e,t){return nh(e).x-e[0].x<t&&e.some(({width:e})=>0===e)}function i7(e){let r=[e.h,...e.Fe].flatMap(e=>e.map((t,n)=>[t,np(e,
n)])),l=nk(r.map(([e])=>e.x)).sort((e,t)=>e-t),o=[],i=[];for(let e=0;e+1<l.length;e++){let a=((e,n,r)=>{let l=(n+r)/2,o=e.some(([e,t])=>i8(t.x-e.x,t.y-e.y)),i=[...e].sort((e,t)=>ae(e,l)-ae(t,l)),a=[
];for(let e=0;e+1<i.length;e+=2){let l=n=>{let[r,l]=[ae(i[e],n),ae(i[e+1],n)];return{width:tL(t(0,l-r)),x:n,Xr:o,low:r,high:l}};a.push([n,r].map(l))}return a})(r.filter(([r,o])=>n(r.x,o.x)<=l[e]&&t(
r.x,o.x)>=l[e+1]).filter(([e,t])=>e.x!==t.x),l[e],l[e+1]);for(let[e,t]of(a.length!==i.length&&(i=a.map(()=>[]),o.push(...i)),a.entries()))i[e].push(...t)}return o}function ae([e,t],n){return e.y+(
t.y-e.y)*(n-e.x)/(t.x-e.x)}function at(e,t,{minRip:r,step:o=1,Qr:i=o}){if(!(e>0&&t>0))throw C(`rows of ${t} across ${e}`);if(e<=t)return{rowCount:1,first:e,last:e,Qt:e,Zt:0,note:e<r?tn:e===t?eG:
"one row"};let a=e%t,u=x((e-a)/t);if(a<i)return{rowCount:u,first:t,last:t,Qt:t,Zt:a,note:eG};let s={rowCount:u+1,Qt:a,Zt:0};if(a>=r)return{...s,first:t,last:a,note:"last row ripped"};let f=n(t,l((a+
t)/2/o)*o),h=a+t-f;return{...s,first:f,last:h,note:h<r?tn:"first and last row alike"}}function an(e,n,r){if(r<=0)return{region:e,most:0};let l=ar(e,n,r),o={vn:n.mt,mt:n.vn},i=ar(i5(l.region),o,r);
return{region:i.most>0?i5(i.region):l.region,most:t(l.most,i.most)}}function ar(e,n,l){let o=e.flatMap(e=>((e,t,n)=>{let r=[];for(let l of((e,t)=>{var n,r;let l=e.length,o=t=>e[t%l],i=e=>!((e,t,{vn:
n,mt:r})=>e.y===t.y&&n.includes(e.y)||e.x===t.x&&r.includes(e.x))(o(e),o(e+1),t),a=e=>{var t,n,r;return i(e+l-1)&&i(e)&&(t=o(e+l-1),as([t,n=o(e),r=o(e+1)])&&30>i6(t,n,r))},u=nw(l,e=>e),s=null!=(r=
null!=(n=u.find(e=>!i(e+l-1)))?n:u.find(e=>!a(e)))?r:0,f=[];for(let e of u.map(e=>s+e)){if(!i(e))continue;let t=i(e+l-1)?o(e+l-1):null,n={corners:[o(e),o(e+1)],before:t,after:i(e+1)?o(e+2):null},r=
nh(f);e>s&&r&&a(e)?f[f.length-1]=au(r,n):f.push(n)}return f})(e,t)){let e=nh(r),t=e&&nh(e.corners)===l.corners[0]?au(e,l):null;t&&as(t.corners)&&al(t)<n?r[r.length-1]=t:r.push(l)}return r})(e,n,
l)).filter(e=>{let t;return(t=al(e))>4&&t<l&&r(ao(e))>t&&!(({corners:e,before:t,after:n})=>{let r=[...t?[t]:[],...e,...n?[n]:[]];return nd(r.slice(1,-1).map((e,t)=>i6(r[t],e,r[t+2])).filter(e=>e<
30))>10})(e)});return 0===o.length?{region:e,most:0}:{region:iB(e,o.map(ai)),most:t(...o.map(al))}}function al({corners:e}){let r=e.map(({x:e})=>e);return t(...r)-n(...r)}function ao({corners:e}){
return nh(e).y-e[0].y}function ai(e){var r;let{corners:l,before:o,after:i}=e,a=l.map(({x:e})=>e),u=ao(e)>0,s=u?n(...a):t(...a),[f,h]=[l[0],nh(l)],p={x:s,y:aa(h,i,s,u)},c={x:s,y:aa(f,o,s,!u)};
return 0>iT(r=[...l,p,c])?[...r].reverse():r}function aa(e,t,n,r){if(null===t)return e.y;let i=t.y-e.y,a=(n-e.x)/(t.x-e.x);if(!(a>0&&a<=1)||0===i||i>0!==r)return e.y;let u=e.y+a*i;return r?l(u):o(
u)}function au(e,t){return{corners:[...e.corners,...t.corners.slice(1)],before:e.before,after:t.after}}function as(e){let t=e.slice(1).map(({y:t},n)=>t-e[n].y);return t.every(e=>e>=0)||t.every(e=>e<=
0)}function af(e,t,n,r){let{x0:l,y0:o,x1:i,y1:a}=iC(e),[u,s,f,h]=[l-n,o-r,i+n,a+r];return t.length>0&&iG([[{x:u,y:s},{x:f,y:s},{x:f,y:h},{x:u,y:h}]],t).length>0}function ah(e,t){let n=(t-e%t)%t;
return e>0&&n<=tE(2)?e+n:e}function ap(e,t){return 2>=r(e-t)?t:e}function ac(e){let{y0:t,y1:n}=iC(ag(e).map(({h:e})=>e));return n-t}function ag({part:e,beside:t}){return[e,...t]}function ad({name:e,
length:i,width:a},u,s,f){var h,p;let c=s.expansionGap;if(2*c>=n(i,a))return n$.Go(eY,no(c,f,k));let g="angle"===(h=s.layDirection).l?h.degrees:ee!==h.l?90*(ea===h.l):h.v>4?null:90*(h.v%2!=1);if(
null===g)return n$.Jo(e4,ee===(p=s.layDirection).l?p.v:0,4);if(u.plankLength/s.markingStep>2e4)return n$.Tr(eC,no(s.markingStep,f,k),2e4);let d=l(t(i,a)/u.plankWidth);if(d>1e3)return n$.Ko(tr,d,1e3);
let m=l(i*a/(u.plankLength*u.plankWidth));if(m>5e4)return n$.xr(e||tl,m,5e4);let{plankWidth:w,Vn:y}=u,{minRip:$,markingStep:v}=s,b=((e,i)=>{let{plankWidth:a,Zr:u=tE(a)}=i,s=i.body&&i.body.length>0?
i.body:e,f=((e,t)=>{let n={...i3(t),left:0,low:0},{x0:r,y0:l}=iC(e.map(e=>e.map(e=>i1(n,e))));return{...n,left:r,low:l}})(s,i.degrees+180*(z===i.startSide)),h=i2(f,e),{x1:p,y1:c}=iC(i2(f,s));if(c<=
0)return{Te:f,floor:[],depth:c,length:p,plankWidth:a,eo:0,ks:0,rows:[],q:[]};let g=((e,r,{minRip:o,firstRow:i,markingStep:a=1,xn:u})=>{var s,f;let h="auto"===i?at(ah(tE(e),r),r,{minRip:tE(t(0,o-2)),
step:tE(a)}).first:n(i>=tM(r)?r:tE(i),tE(e)),{last:p}=(f=h+ah(tE(e)-h,r),f<=h?{rowCount:1,last:f}:{rowCount:1+l((f-h)/r),last:(f-h)%r||r});return{first:h,last:p<tE(t(a,null!=(s=null==u?void 0:u.er)?
s:0))?r:p}})(c,u,i),{xn:d}=i,m={...i,xn:d&&{...d,bare:i2(f,d.bare)}},{rows:w,q:k}=((e,i,a)=>{let u=[],s=[];for(let[f,h]of i){let p=[f,h].filter(e=>e>i[0][0]&&e<nh(i)[1]),c=((e,i,{plankWidth:a,
markingStep:u=1,squareCut:s=0,xn:f,kerf:h=1/0})=>{let p=[];return{runs:((e,n,l)=>{let o=[];for(let i of[...e].sort((e,t)=>e.y0-t.y0)){let e=([e,...o])=>r(e.x0-i.x0)<=l&&r(e.x1-i.x1)<=l&&i.y0-t(e.y1,
...o.map(({y1:e})=>e))>=n,a=o.find(e);a?a.push(i):o.push([i])}return o.sort(([e],[t])=>e.x0-t.x0||e.y0-t.y0)})(iz(e).flatMap(({h:e,Fe:r})=>{let{region:u,most:h}=an([e,...r],{vn:i,mt:[]},s);return iz(
u).flatMap(e=>{if(!f)return[e];let r=((e,r,{er:i,bare:a,fe:u})=>{let{x0:s,x1:f}=iC([e.h]),h={from:s,to:f,width:f-s,kn:!1,ae:[e.h]};if(h.width<i&&!af(h.ae,a,u,0))return{ye:[],q:[h]};let p=i7(
e).filter(e=>!i9(e,r)).flatMap(e=>{let r=[];for(let a of e.flatMap((r,a)=>a%2==0?((e,r,i)=>{if(e.Xr||n(e.width,r.width)>=i)return[];let a=(i-e.width)/(r.width-e.width),u=e.x+a*(r.x-e.x),s=e.width<i?
e.x:l(u),f=r.width<i?r.x:o(u);if(f<=s)return[];let h=(t,n)=>e[t]+(r[t]-e[t])*(n-e.x)/(r.x-e.x),p=(e,t)=>({x:t,y:e$===e?o(h(e,t)):l(h(e,t))}),c=[p(e$,s),p(e$,f),p(eV,f),p(eV,s)],g=e=>x(h(eV,e)-h(e$,
e)),d=t(e.width,r.width)>=i;return[{from:s,to:f,width:t(g(s),g(f)),kn:d,ae:[c]}]})(r,e[a+1],i):[])){let e=nh(r);(null==e?void 0:e.to)===a.from?r[r.length-1]={from:e.from,to:a.to,width:t(e.width,
a.width),kn:e.kn||a.kn,ae:[...e.ae,...a.ae]}:r.push(a)}return r}).filter(e=>!af(e.ae,a,0,u));return 0===p.length?{ye:[e],q:p}:{ye:iz(iB([e.h,...e.Fe],p.flatMap(({ae:e})=>e))),q:p}})(e,a,f);
return p.push(...r.q),r.ye}).map(e=>({part:e,Ve:h,...iC([e.h])}))}).filter(({x0:e,x1:t,y0:n,y1:r})=>t-e>=u&&r-n>=u),t(h,u),t(s,u)).map((e,r)=>((e,r,l)=>{let[o,...i]=e.map(e=>e.part),a=nm(e.map(e=>((
e,t)=>{let n=i7(e),r=n.filter(e=>!i9(e,t)),l=(r.length>0?r:n).flat(),o=l.filter(({Xr:e})=>!e),{width:i,x:a}=o.length>0?nm(o,e=>e.width):nm(l,e=>-e.width);return{width:i,x:a}})(e.part,l)),e=>e.width);
return{$e:r,x0:n(...e.map(({x0:e})=>e)),x1:t(...e.map(({x1:e})=>e)),part:o,beside:i,Ie:a,Ve:t(...e.map(({Ve:e})=>e))}})(e,r+1,a)),q:p}})(iQ(iQ(e,{y:f},1),{y:h},-1),p,a),{runs:g}=c,d=t(1,u.length+ +(
g.length>0));if(s.push(...c.q.map(({from:e,to:t,width:n})=>({w:d,from:e,to:t,width:n}))),0===g.length)continue;let m=ap(t(...g.map(ac)),a.plankWidth),w=nm(g.map(e=>e.Ie),e=>e.width);u.push({w:d,y0:f,
y1:h,width:m,Ie:w,runs:g})}return{rows:u,q:s}})(h,((e,r,o)=>{let{y0:i,y1:a}=iC(e),u=l((r-tE(i))/o),s=l((tE(a)-r)/o);if(!(u+s<=2e4))throw C(`${u+s} rows`);let f=e=>tM(r+(e-u)*o);return nw(u+s,e=>[t(f(
e),i),n(f(e+1),a)])})(h,g.first,u),m),[y,$]=[tM(g.first),tM(g.last)];return{Te:f,floor:h,depth:c,length:p,plankWidth:a,eo:y,ks:$,rows:w,q:k}})(((e,t,n)=>{let[r,l]=[e-n,t-n];return[[{x:n,y:n},{x:r,y:
n},{x:r,y:l},{x:n,y:l}]]})(i,a,c),{plankWidth:w,Zr:y.width,minRip:$,markingStep:v,degrees:g,startSide:"near",firstRow:"auto"});return 0===b.rows.length?n$.Wo(e||tl,no(v,f,k)):{read:{name:e,units:f,C:
u,rules:s,start:{startEdge:ep,reuseStrips:!0,aim:"fewest"}},layout:b}}tj(12);var am=tj(12);function aw({h:e,Fe:t},n){return{shape:[e,...t],nn:n}}function ak(e){return[...e].sort((e,t)=>iC([e.h]).y0-
iC([t.h]).y0)}function ay(e,t){let n=ak(e).map(({h:e})=>iC([e]));return n.every(({y0:e},r)=>0===r||e-n[r-1].y1>=t)}function ax({h:e}){let{y0:t,y1:n}=iC([e]);return n-t}function a$(e,n,r=()=>!1){if(
0===n)return e;let{x0:l,y0:o,x1:i,y1:a}=iC(e);return 2*n>=t(i-l,a-o)?[]:iB(e,e.flatMap(e=>{let t;return(t=e.map((t,n)=>{var l;let o,i,a;return l=np(e,n),a=ev((o=l.x-t.x)*o+(i=l.y-t.y)*i),{from:t,to:
l,ux:o/a,uy:i/a,Bn:r(t,l)}})).flatMap((e,r)=>{if(e.Bn)return[];let l=nc(t,r),o=np(t,r),i=av(l,e,n).second,{first:a,second:u,nr:s}=av(e,o,n),f=[e.from,e.to,a,i];return s?[f,[e.to,u,a]]:[
f]})}))}function av(e,n,r){let l=e.ux*n.uy-e.uy*n.ux,o=e.ux*n.ux+e.uy*n.uy;if(e.Bn||n.Bn||!(l<0||0===l&&o<0)){let t=l>0?r:0;return{first:ab(e.to,e,r,n.Bn?t:0),second:ab(e.to,n,r,e.Bn?-t:0),nr:!
1}}let i=ev(t(0,1+o)/2);if(2*i>=1){let t=((e,t,n)=>{let{x:r,y:l}=e.to,o=n/(1+e.ux*t.ux+e.uy*t.uy),i=-e.uy-t.uy,a=e.ux+t.ux,u=[e,t].find(({ux:e})=>0===e),s=[e,t].find(({uy:e})=>0===e);return{x:u?r-n*
u.uy:iJ(r+o*i,i),y:s?l+n*s.ux:iJ(l+o*a,a)}})(e,n,r);return{first:t,second:t,nr:!1}}let a=r*ev((1-i)/(1+i));return{first:ab(e.to,e,r,a),second:ab(e.to,n,r,-a),nr:!0}}function ab(e,t,n,r){return{x:iJ(
e.x-n*t.uy+r*t.ux,-t.uy),y:iJ(e.y+n*t.ux+r*t.uy,t.ux)}}function aL(...e){return{Un:e}}var aE=2*ey/16;function aS(e,t){return iP(e,t)}function aM({length:e,width:t}){return[{x:0,y:0},{x:e,y:0},{x:e,y:
t},{x:0,y:t}]}function aj(e,t){return e.reduce((e,{from:t,to:n})=>{let r,l,o;return r=n.x-t.x,l=n.y-t.y,o=e=>r*(e.y-t.y)-l*(e.x-t.x),e.flatMap((t,n)=>{let r=np(e,n),l=o(t),i=o(r),a=l>=0?[t]:[];if(l*
i>=0)return a;let u=l/(l-i);return[...a,{x:tL(t.x+u*(r.x-t.x)),y:tL(t.y+u*(r.y-t.y))}]})},aM(t))}function aI(e,l){let o=aj(e,l),i=i=>{let a=e.filter(e=>P===e.kind&&e.edge===i),u=R===i?0:l.width,s=
o.filter(e=>2>=r(e.y-u)||a.some(t=>2>=r(aT(t,e.x)-e.y))).map(({x:e})=>e);return 0===s.length?{from:0,to:0}:{from:n(...s),to:t(...s)}};return{start:i(R),far:i(z)}}function aA(e,t,n=2){return r(aP(e,
t))<=n*a_(e)}function a_({from:e,to:t}){return r(t.x-e.x)+r(t.y-e.y)}function aP({from:e,to:t},n){return(t.x-e.x)*(n.y-e.y)-(t.y-e.y)*(n.x-e.x)}function aT({from:e,to:t},n){return e.y+(t.y-e.y)*(n-
e.x)/(t.x-e.x)}var aO=["x0","y0","x1","y1"];function aC(e,n){return a$(e,t(1,o(n/2)-1))}function aR(e,{shape:t,step:n}){return 0===aC(iG([e],t),n).length}function aN({kind:e,end:t,edge:n,from:r,to:
l}){return eb===e||P!==e&&i8(l.x-r.x,l.y-r.y)?t:n}function az(e,t,n){return e.map((t,n)=>({from:t,to:np(e,n)})).reduce((e,{from:r,to:l})=>t.some(e=>aA(e,r,n)&&aA(e,l,n))?e+iP(r,l):e,0)}function aF([
e,t],n,[r,l]){return n[e]!==n[t]?n[e]>n[t]?e:t:r<=l?e:t}function aW({from:e,to:r},l={from:e,to:r}){let o=t(e,l.from);return{from:o,to:t(o,n(r,l.to))}}function aD({Ne:e,so:n,he:r,_e:l},o,i){
return e.filter(e=>P!==e.kind&&e.end===o).reduce((e,{Y:t})=>e+t,i+n[o])>t(r,l)}function aq(t,n){let r=((t,n)=>{let{U:r,en:l,xe:o}=t;return({rowIndex:i,E:a,ze:u})=>{let s=(({en:e},t)=>e.findIndex((n,
r)=>t<e[r+1]))(t,i),f=ng(o.rows[i].runs.slice(0,a),e=>e.length),{layout:h,read:p}=r[s],{w:c}=h.rows[i-l[s]];return{room:p.name===r[n].read.name?e:p.name,label:`${c}-${f+u+1}`}}})(t,n);return t=>{let{
room:n,label:l}=r(t);return e===n?l:`${n} ${l}`}}function aK({xe:e},{rowIndex:t,E:n,ze:r}){return e.rows[t].runs[n][r]}var aB={us:tj(12),metric:tI(300)};function aG(e,{pt:t,tn:n},r){return!t&&e<aB[
r]&&n>=aB[r]}function aV({he:e,_e:t,ve:r},{As:l,step:o}){return 0===r.length&&null!==l&&l-n(e,t)<o}var[aH,aU]=nA(3/8,10),aJ={left:"left end",right:"right end",middle:"no end",whole:"both ends"},aZ={
"left end":f,"right end":h,"both ends":m,"no end":v};function aX(e,t){return rg(rc({text:{given:e,read:re(u)}},t,(e,t)=>(({n:e,d:t},n)=>e/(t*(p===n?16256:640)))(e.text,t)))}function aQ(e,t){
return rg(rc({value:{given:e,read:rf((e,t)=>rs(e,u,t))}},t,(e,t)=>aY(e.value,t)))}function aY(e,t){return no(tS(e),t,k)}function a0(e,t){return e/(p===t?a2:a3)}function a1(e,t){return p===t?e%127==0?
tA(e):x(1e4*tA(e))/1e4:e%64==0?t_(e):x(1e3*t_(e))/1e3}n_.flatMap(e=>q in e&&F==typeof e.blank?[[e.key,e.label.toLowerCase()]]:[]),n_.flatMap(e=>ec===e.use?[[e.key,e.inRange]]:[]);var a2=tE(16256),a3=
tE(640),a4=[ed,k,O,ea,u,"keep factory end","rest of plank","notes"];function a6(e,{markingStep:t},n){if(!(tM(e)/t<=2e4))throw Error(n$.Tr(eC,no(t,n,k),2e4))}function a5(e,t,n,r,{Fs:o=1,zt:i}={}){a6(
t,n,r);let a=rw(et,e,n1(s),r),u=a.length;if(u>500)throw Error(n$.jn(et,u,500));if(u*o>500)throw Error(n$.kr("plank_length",u*o,500));let f=l(nd(a)/t);if(f>5e4)throw Error(n$.xr(et,f,5e4));let h=
a.map((e,t)=>((e,t,n,r)=>{let l=e-2*tE(n);if(l>0)return l;let[o,i]=[no(n,r,k),aY(e,r)];throw Error(n$.Pr(`runs, row ${t+1}`,o,i))})(e,t,n.expansionGap,r)),p=h.map(tS),{job:c,ke:g}=iS(p,tS(t),n),d=i$(
c,{Ze:4e7/o,zt:i}),m=iM(d,p.map(e=>({width:0,runs:[{x0:0,x1:e}]})),0,g),w=((e,t,n,r)=>{let{kerf:l,play:o,minPiece:i,minStagger:a,alignedDistance:u}=r,s=t.map(e=>({room:0,width:0,runs:[{x:0,length:
e}]}));return{...e,plankLength:n,plankWidth:0,kerf:l,play:o,minPiece:i,minStagger:a,alignedDistance:u,rows:s}})(c,m.map(([e])=>nd(e)),tM(t),n);return{runs:h,job:w,plan:iI(d,w,m)}}function a8(e,t){
let n=ni(t),r=`runs, row ${e.rowIndex+1}`;return n$.Tt(r,e.rule,n(e.found),n(e.wanted))}var a9=[ed,"first piece",eH,"whole planks","last piece",eH,"left over"],a7=[e,e,e,e,e,e,e],ue=eL(n_.map(({key:
t,use:n,choices:r,Xo:l})=>[t,null!=l?l:Q===n?null==r?void 0:r[0][0]:e])),ut=n_.flatMap(e=>"inRange"in e?[[e.key,e.inRange]]:[]);function un(e,t){let n=uo(e,t).filter(({key:e})=>eR!==e),r=n.some(({
key:e})=>Z===e),l=ul(n,t);return r?l:{...l,expansionGap:0}}function ur(e,t){return ul(uo(e,t),t)}function ul(t,n){let r=nz(n),l={...ue,...eL(t.map(e=>[e.key,e.Oe]))},o=e=>{var n,r;return null!=(r=
null==(n=t.find(t=>t.key===e))?void 0:n.An)?r:e},i=((t,n,r)=>{let{layDirection:l,startSide:o,firstRow:i,startEdge:a,reuseStrips:u,aim:s,longestAlong:f,longestAcross:h,gapBySpan:p,...d}=t;return{...d,
layDirection:((t,n,r)=>{if(eh===tD(c(t)))return{l:O};let l=(t=>{let n=tD(c(t));if(e===n||O===n)return{l:O};if(ea===n)return{l:ea};if("shared"===n)return{l:"shared taper"};let r=
/^wall ?([1-9]\d*)$/.exec(n);if(r)return{l:ee,v:g(r[1])};let l=nK(t);return null===l||/[rl]/.test(n)?null:{l:"angle",degrees:l}})(t);return null===l&&r.ne("rules.layDirection",n$.layDirection(n,t)),
null!=l?l:{l:O}})(l,n,r)}})(((t,n,{path:r,An:l},o,i={})=>eL(t.map(t=>{let a=e===r?t.key:`${r}.${t.key}`,f=n[t.key];if(F==typeof f)return[t.key,f];let h=i[t.use],g=(({Ye:e},t)=>{if(void 0===e)return!
0;let[n,...r]=e;return r.includes(c(t[n]))})(t,n)?h?h(a,l(t),f,o):((e,t,n,r,l)=>{switch(e.use){case s:case u:return l.length(t,n,r,e.use);case e5:return l.length(t,n,r,u);case"room!":return l.an(t,n,
r,s);case"plank!":return l.an(t,n,r,u);case eU:return l.Pt(t,n,r,null!=(o=e.most)?o:1/0);case"offset":var o,i;let a;if(nF(r))return null;let f=(a=nr(r,s,l.units)).ok?{ok:!0,ticks:tL(tV(a.Jn))||0}:a;
return f.ok?f.ticks:(l.ne(t,n$.length(n,r,f.Be,s,l.units)),null);case"step":if(nF(r))return null;let h=l.an(t,n,r,u);return h>0&&!(h>=160&&h<=16256)&&l.ne(t,n$.markingStep(n,r,l.units)),h;case ec:
case"price":case w:case"fraction":case eX:return l[e.use](t,n,r);case T:return l.date(t,n,c(r));case ee:case eE:let p;return i=e.use,null!==(p=l.count(t,n,r))&&p>=1?p:((null!==p||nF(r))&&l.ne(t,
n$.on(n,r,i)),1);case"turn":if(nF(r))return null;let g=nK(r);return null===g&&l.ne(t,n$.turn(n,r)),g;case"words":return c(r).trim();default:return r}})(t,a,l(t),f,o):null;return(({use:e,most:t},n)=>
void 0!==t&&eU!==e&&w==typeof n&&n>t)(t,g)&&o.ne(a,(({use:e,most:t=0},n,r,l)=>ec===e?n$.vo(n,r,t):s===e?n$.No(n,r,l):n$.wr(n,r,no(t,l,k),l))(t,l(t),f,o.units)),[t.key,null===g||e===g?(({use:t,blank:
n},r)=>F==typeof n?n[+(p!==r)]:d==typeof n?t4(n,r):void 0!==n?n:nq.includes(t)?e:"room!"===t||"plank!"===t||eU===t||ee===t||eE===t?0:null)(t,o.units):g]})))(n_,l,{path:"rules",An:({key:e})=>o(e)},r),
o(eR),r);return ua(r.sn.map(({text:e})=>e)),i}function uo(t,n){let r=rk(t);if(r.every(e=>e.every(nX)))return[];if(2!==r[0].length)throw Error(n$.Fo(ry(r)));let l=[],o=[];return r.forEach(([t,r],i)=>{
let a=`rules, row ${i+1}`,s=((t,n,r,l)=>{var o;let i,a;if(nX(t))return nX(n)?void 0:{says:n$.$o};let s=(i=e=>e.toLowerCase().replace(/[\s-]+/g,A).trim(),a=d==typeof t?i(t):e,null==(o=ut.find(([,e])=>
i(e)===a))?void 0:o[0]);if(void 0===s){let e=ut.map(([,e])=>e);return{says:n=>n$.Io(n,nQ(t),e)}}if(nX(n))return;let f=`${r}, ${ui(s)}`;return tb(n)?{says:()=>n$.length(f,e,T,u,l)}:{key:s,An:f,Oe:ru(
n)}})(t,r,a,n);void 0!==s&&(nZ(s)?o.push(s.says(a)):l.some(e=>e.key===s.key)?o.push(n$.Co(a,ui(s.key))):l.push(s))}),ua(o),l}function ui(e){var t,n;return null!=(n=null==(t=ut.find(([t])=>t===e))?
void 0:t[1])?n:e}function ua(e){if(e.length>0)throw Error(n$.Mn(e[0],e.length-1))}function uu(n,r,l,o){var a;let u,s,f,h,{values:p,units:c}=rd({plank_length:{given:r,read:n3}},o);return h=[...(({
plan:{P:e},job:t},n)=>[...nG(e,e=>a8(e,n)),...nV(e,t.plankLength)])(a=a5(n,p.plank_length,un(l,c),c),c),...(({f:e,u:t,P:n})=>{let r=e-t;return n.length>0||0===r?[]:[`${
e} planks are not proved to be the fewest: at most ${r} fewer may be possible.`]})(a.plan)].map(e=>[e,...a7.slice(1)]),[a9,...(s=(({job:e,plan:t})=>{let n=t.rows.map(()=>0);for(let r of rq(e,t).r)n[
nh(r.pieces).rowIndex]+=r.Ln;return n})(a),u=new i,f=(e,t)=>{var n;let r=u.get(e.plank),l=null!=(n=null==r?void 0:r.ht)?n:u.size+1;return u.set(e.plank,{ht:l,rowIndex:t}),void 0===r?`plank ${l}`:
`offcut of ${r.rowIndex===t?"this row":`row ${r.rowIndex+1}`} (plank ${l})`},a.plan.rows.map((n,r)=>{let l=n.runs[0],o=l.map(e=>a1(e.length,c)),i=l.map(e=>f(e,r)),a=l.length-1;return[r+1,o[0],i[0],t(
0,a-1),a>0?o[a]:e,a>0?i[a]:e,a1(s[r],c)]})),...h].map(e=>[...e])}function us(n,r,l,o,i){let a=rk(r).flat(),u=t(1,(a.length>1?a.filter(e=>!nX(e)):rk(o).flat()).length),s=rd({proof:{given:i,read:ra,B:(
)=>!1}},e).values.proof,f=rc({plank_length:{given:r,read:n3}},o,(e,t)=>{let r=un(l,t),{plan:o,job:i}=a5(n,e.plank_length,r,t,{Fs:u,zt:!1}),{P:a,f:s}=o;if(0===a.length)return{r:s+r.spare,proof:nU(o)};
let f=[...nk(a.map(({rule:e})=>e)).map(e=>nH(a.filter(t=>t.rule===e))[0]).map(e=>a8(e,t)),...nV(a,i.plankLength)].join(A),h=n$.qo(f,s);return nJ(et,()=>h)}),h=t=>{let{r:n,proof:r}=e===t?{r:e,proof:
e}:t;return s?[n,r]:[n]};return rg(f.map(e=>e.flatMap(h)))}function uf(l,o,a,u,p,w){let{values:y,units:x}=rd({length:{given:l,read:n9(n0(s))},width:{given:o,read:n9(n0(s))},plank_length:{given:a,
read:n3},plank_width:{given:u,read:n4}},w),$=nI(O,y.length.Oe,y.width.Oe,x);if(null!==$)throw Error($);let v={name:e,...nB(y.plank_length,y.plank_width),te:0,planksPerBox:null,pricePerBox:null};
return((l,o,a,u)=>{let s=ad(l,o,a,u);if(d==typeof s)throw Error(s);let p=ij([s],{Ze:4e7}),w=(e=>{let{read:t,layout:r}=e.U[0],l=ni(t.units);return[...(({U:e,xe:t,ft:n,en:r},l)=>{let[o,i]=[r[0],r[1]],{
rows:a}=e[0].layout,u=t.P.filter(e=>e.rowIndex>=o&&e.rowIndex<i);return[...nG(u,e=>(({rule:e,found:t,wanted:n},r,l)=>{let o=ni(l);return n$.Tt(`Row ${r}`,e,o(t),o(n))})(e,a[e.rowIndex-o].w,l)),...nV(
u,n.plankLength)]})(e,t.units),...((e,t)=>{var r;let{read:l,layout:o}=e.U[0],{minRip:a}=l.rules,u=new i;for(let{w:e,place:t}of o.rows.flatMap(({w:e,runs:t})=>t.filter(e=>e.Ie.width<a-2).map(({$e:t,
Ie:n})=>({w:e,$e:t,place:n}))))u.set(e,n(t.width,null!=(r=u.get(e))?r:t.width));let s=[...u].sort(([,e],[,t])=>e-t).map(([e,n])=>`Row ${e} is ${t(n)} at its nar\
rowest, under the minimum rip of ${t(a)}.`),f=s.slice(0,3),h=s.length-f.length;return h>0?[...f,`${h} more ${1===h?"row is":"rows are"} under it somewhere.`]:f})(e,l),...(({ke:e},t)=>e.unit===
e.markingStep?[]:[`A plank of ${tH(t_(e.plankLength),2)} mm is not a whole number of marking steps of ${t(e.markingStep)}: staggers and pieces are kept a step o\
r two longer, so that marked lengths still meet the rules.`])(e,l),...1===r.rows.length?[`The floor is one row, ${l(r.rows[0].width)} wide.`]:[]]})(p).map(t=>a4.map((n,r)=>0===r?t:e));return[[...a4],
...ix(function*(l,o){var a,u;let s,p,d,w=l.U[0],{layout:y,read:x}=w,$=l.en[0],v=e=>e.w-y.rows[0].w,b=e=>l.xe.rows[$+v(e)].runs[e.$e-1][e.rr-1],{markingStep:M,squareCut:j,kerf:I}=x.rules,_={...x.C,
markingStep:M,squareCut:j,kerf:I},T=(s=l.en[0],l.U[0].layout.rows.map((e,t)=>e.runs.map((e,n)=>{var r,o;let i;return r=e.x0,o=l.xe.rows[s+t].runs[n].map(({length:e})=>e),i=r,o.slice(0,-1).map(e=>i+=
e)}))),O=[];for(let[e,l]of y.rows.entries()){let i,a,u,s,p;O.push(...(i=y,a=l,u=T[e],s=_,p=null==o?void 0:o.Ia,a.runs.flatMap((e,l)=>{if(!u[l])throw C(`no joints for row ${a.w}, run ${e.$e}`);return(
(e,{w:l,y0:o,y1:i},a,u,s,p)=>{let{$e:c,x0:g,x1:d}=a,m=[g,...u,d];if(m.some((e,t)=>t>0&&e<=m[t-1]))throw C(`joints ${u.join(A)} of a run from ${g} to ${d}`);let w=ag(a).flatMap(({h:e,Fe:t})=>[e,...
t]),{kerf:k=0}=s,y=iC(e.floor),x=[o,i].filter(e=>e>y.y0&&e<y.y1);return m.slice(1).flatMap((o,i)=>{var g,d;let{region:y,most:$}=((e,n,{squareCut:r=0},l)=>{let o=an(e,n,r),[i,a]=[iC(e),iC(o.region)],{
region:u,most:s}=i.x0===a.x0&&i.x1===a.x1?o:{region:e,most:0},f=r>0?null==l?void 0:l.Fa(u,n.vn,r):null;return f?{region:f.region,most:t(s,f.most)}:{region:u,most:s}})(0===u.length?w:iX(w,m[i],o),{vn:
x,mt:u},s,p),v=null==(g=null==p?void 0:p.Ea)?void 0:g.call(p,y),b=null!=(d=null==v?void 0:v.region)?d:y,L=t($,0===i||i===u.length?a.Ve:0),E=e=>((e,l,o)=>{var i,a,u;let{x0:s,y0:p,x1:c,y1:g}=iC(e),d=
e.map(e=>e.map(({x:e,y:t})=>({x:e-s,y:t-p}))),m={length:c-s,width:g-p},w=null==o?void 0:o(d,m,l),k=null!=(i=null==w?void 0:w.rest)?i:d,y=((e,t,l)=>{let o=e.flat(),i=e.flatMap(e=>e.map((t,n)=>({from:
t,to:np(e,n)}))).filter(e=>{let t;return e.from.x!==e.to.x&&e.from.y!==e.to.y&&(t=e,o.every(e=>aP(t,e)>=-2*a_(t)))}).sort((e,t)=>a_(t)-a_(e)),a=[];for(let e of i)a.some(t=>aA(t,e.from)&&aA(t,e.to))||
a.push(e);return a.map(e=>(({from:e,to:t},{length:l,width:o},i)=>{let a=t.x-e.x,u=t.y-e.y,s={x:u>0?l:0,y:a>0?0:o},p=n(o,tL(r(aT({from:e,to:t},s.x)-s.y))),c=n(l,tL(r(e.x+a*(s.y-e.y)/u-s.x))),[g,d]=[o-
p<i,l-c<i];return{kind:d&&!i8(a,u)?P:g?eb:eE,end:u>0?h:f,edge:a>0?R:z,l:c,Y:p,Rs:180*tt(r(a),r(u))/ey,from:e,to:t}})(e,t,l))})(k,m,l),x=((e,t,n)=>{let r=[];for(let l of e){let e=-(n/2)*iP(l.from,
l.to);aj(r,t).some(t=>aP(l,t)<e)&&l.l>=n&&l.Y>=n&&r.push(l)}return r})(y,m,l),{start:$,far:v}=aI(x,m),b={start:aW($,null==w?void 0:w.ro.start),far:aW(v,null==w?void 0:w.ro.far)},L=e=>{var t;
return x.reduce((t,{kind:n,end:r,Y:l})=>t-(P===n&&r===e?l:0),m.width-(null!=(t=null==w?void 0:w.Aa[e])?t:0))};return{length:m.length,oo:n(b.start.to-b.start.from,b.far.to-b.far.from),he:t(0,L(f)),_e:
t(0,L(h)),ro:b,Ne:x,He:(e=>{let{shape:n,size:l,all:o,step:i}=e;return iO(n)===l.length*l.width?[]:iB([aj(o,l)],n).flatMap(e=>((e,t)=>{if(0>=iT(e)||0===aC([e],t).length)return[];let n=iG((e=>{let{x0:
t,y0:n,x1:r,y1:l}=iC(e),[o,i]=[{x:t-48,y:n-48},{x:r+48,y:l+48}],a=[o,{x:i.x,y:o.y},i,{x:o.x,y:i.y}];return iB([a],a$(iB([a],e),12))})(a$([e],8)),[e]).filter(e=>iT(e)>0&&aC([e],t).length>0),[l,o]=[iC(
[e]),iC(n)];return 1===n.length&&aO.every(e=>r(l[e]-o[e])<t/2)?[e]:n})(e,i)).map(n=>((e,n)=>{let{size:l,step:o}=n,i=((e,{size:t,all:n,step:r})=>{let l=aM(t),o=e=>({from:l[e],to:l[(e+1)%4]}),i=(t,l)=>
az(e,[l],r/2)+az(e,n.filter(e=>aN(e)===t),4);return{start:i(R,o(0)),right:i(h,o(1)),far:i(z,o(2)),left:i(f,o(3))}})(e,n),a=iC([e]),u=(({x0:e,y0:t,x1:n,y1:r},l,{size:o,step:i})=>({x0:l.left>=i?0:e,y0:
l.start>=i?0:t,x1:l.right>=i?o.length:n,y1:l.far>=i?o.width:r}))(a,i,n),s=aR((({x0:e,y0:t,x1:n,y1:r})=>[{x:e,y:t},{x:n,y:t},{x:n,y:r},{x:e,y:r}])(u),n),p=(e=>{let t=t=>e[t%e.length],n=1/(2-2*ex(2*
aE));for(let l=0;l<e.length;l++){let o=t(l+2),i=e=>tL(o[e]+n*(t(l)[e]+t(l+4)[e]-2*o[e])),a={x:i("x"),y:i("y")},u=aS(o,a),s=2*u*eB(aE/2),f=e=>128>r(aS(t(l+e),a)-u)&&128>r(aS(t(l+e),t(l+e+1))-s);if(s>
512&&[0,1,2,3].every(f)&&e.every(e=>aS(e,a)<u+128))return{Ps:a,Ss:tL(2*u*ex(aE/2))}}return null})(e),c=s?u:a,g=aF([R,z],i,[c.y0,l.width-c.y1]),d=i[g]>=o,m=d&&!((e,t,{all:n})=>az(e,n.filter(e=>aN(
e)===t),4)>0)(e,g,n)?((e,t,{Os:n,size:r})=>{let l=aI(n,r)[t];return l.from<=e.x0&&e.x1<=l.to?l:null})(c,g,n):null,{from:w,to:k}=null!=m?m:{from:0,to:l.length},y=aF([f,h],i,[c.x0-w,k-c.x1]),x=i[y]>=o,
$=!x&&(f===y?w:l.length-k)>=o;return{end:y,edge:g,Sa:$,box:c,Ra:s,h:e,xs:d?"edge":x?eb:"nothing",Oa:x?0:t(0,f===y?c.x0-w:k-c.x1),Ma:d?0:t(0,R===g?c.y0:l.width-c.y1),length:c.x1-c.x0,depth:c.y1-c.y0,
round:p&&aR((({Ps:e,Ss:t})=>nw(32,n=>({x:tL(e.x+t/2*ex(n*aE/2)),y:tL(e.y+t/2*eB(n*aE/2))})))(p),n)?p:null}})(n,e))})({shape:k,size:m,all:y,Os:x,step:l}),ve:null!=(a=null==w?void 0:w.ve)?a:[],so:
null!=(u=null==w?void 0:w.so)?u:{left:0,right:0}}})(e,s.markingStep,null==p?void 0:p.La),S=E(b),M=((e,t,n)=>{let r=iz(e);if(r.length>1)return ay(r,n)?ak(r).map(e=>aw(e,null)):[{shape:e,nn:null}];let{
x0:l}=iC(e),o=t.filter(({xs:e,length:t})=>eb===e&&t>am).flatMap(({box:t,end:r})=>{let o=iz(iX(e,l+t.x0,l+t.x1));if(2!==o.length||!ay(o,n))return[];let[i,a]=ak(o);return[aw(ax(i)<ax(a)?i:a,f===r?h:
f)]});if(0===o.length)return[{shape:e,nn:null}];let i=iB(e,o.flatMap(e=>e.shape));return 1===iz(i).length?[{shape:i,nn:null},...o]:[{shape:e,nn:null}]})(b,S.He,t(k,s.markingStep));return M.map(({
shape:t,nn:r},a)=>{var p,g;let d=iC(t),w={left:0===i||d.x0>m[i],right:i===u.length||d.x1<o},k=((e,t)=>{let[n,r]=[e.he,e._e].map(e=>ap(e,t));return{...e,he:n,_e:r}})(M.length>1?E(t):S,s.plankWidth),y=
((e,t,r)=>{let l=[],o=n(e.he,e._e);(e.ve.some(({ao:e})=>e)||r.plankWidth-o>=r.markingStep)&&l.push(B);let i=t=>!aD(e,t,r.markingStep);return(t.left&&i(f)||t.right&&i(h))&&r.plankLength-e.length>=
r.markingStep&&l.push(en),e.Ne.some(e=>P!==e.kind)&&l.push("angled crosscut"),(e.He.length>0||e.ve.some(({ao:e})=>!e))&&l.push("notch"),l})(k,w,s),x=(g=e.Te,t.map(e=>e.map(e=>(({cosine:e,dt:t,left:n,
low:r},{x:l,y:o})=>{let i=l+n,a=o+r;return{x:tL(i*e-a*t),y:tL(i*t+a*e)}})(g,e))));return{...{w:l,$e:c,rr:i+1,on:a+1},shape:t,Rn:x,qn:w,nn:r,Ve:L,q:null!=(p=null==v?void 0:v.or)?p:0,c:y,...k}})})})(i,
a,e,u[l],s,p)}))),yield}let N=(p=0,d=0,O.map(t=>{var n;return 1===t.on&&(d=t.w===p?d+1:1),p=t.w,{piece:t,label:`${p}-${d}${1===(n=t.on)?e:c.fromCharCode(97+n-1)}`}})),F=new i;for(let e of N)F.set(b(
e.piece),[...null!=(a=F.get(b(e.piece)))?a:[],e]);let W=null!=(u=null==o?void 0:o.$a(N,y,M,x.units))?u:new i,D={all:l,floor:w,yt:(t=>{let n=aq(t,0),r=new i;for(let l of t.ledger.r)for(let o of(
l.pieces.forEach((n,o)=>{r.set(aK(t,l.pieces[o]),((t,n,r,l)=>{let{plankLength:o,kerf:i}=t.ft,{pieces:a}=r,[u,s]=[a[l-1],a[l+1]],h=aq(t,n),p=f===a[l].from||S===a[l].from;return{Tn:u?h(u):e,ie:e,sr:
null,tn:a.slice(0,l).reduce((e,{length:t})=>e-t-i,o),pt:void 0!==s,ar:u&&p?r.Ln:null,rest:((t,n,r,l,o)=>{let{units:i,rules:a}=t.U[n].read,u=aq(t,n);return[o?`write ${u(o)} on it`:(({Ln:t},n,r)=>t<r?
e:`waste ${no(t,n,k)}`)(r,i,a.markingStep),...r.i.filter(({source:e})=>e===l).map(e=>`write ${u(e)} on the strip`)].filter(ny).join(E)})(t,n,r,a[l],s)}})(t,0,l,o))}),l.i)){let{source:l}=o;r.set(aK(t,
o),{Tn:e,ie:l?n(l):e,sr:l&&aK(t,l),tn:l?l.length:t.ft.plankLength,pt:!1,ar:null,rest:e})}return r})(l),ye:F,Es:W,io:o},q=(({Ms:t=[]})=>0===t.length?()=>e:({Rn:e})=>{let n=.02*iO(e),r=t.filter(({h:
t})=>iO(iG(e,[t]))>n);return 0===r.length?"doorway":r.map(({name:e})=>e).join(" + ")})(w),K=[];for(let r of N){let{piece:l}=r;1===l.rr&&(yield),K.push({...((r,l,o,i)=>{var a,u,s,p,c;let{piece:d,
label:w}=r,{all:y,floor:x,yt:$,Es:v}=i,{layout:b,read:M}=x,{units:j,rules:I}=M,A=I.markingStep,_=null!=(a=i.ye.get(l))?a:[],T=((e,n,r,l)=>{let o=iC(n.flatMap(e=>e.piece.shape)),{x0:i,x1:a}=iC(
e.shape),[u,s]=[i-o.x0<l,o.x1-a<l];if(u&&s)return r;let p=t(l,tP(r.length-(i-o.x0)-(o.x1-a),l)),c=u&&(f===r.from||m===r.from),g=s&&(h===r.from||m===r.from);return{...r,length:p,from:c?f:g?h:S}})(d,_,
l,A),O=$.get(l);if(!O)throw Error(`Internal: piece ${w} is cut from no plank.`);let C=aG(l.length,O,j)?O.tn:l.length,N=((t,{on:n},r,l)=>{let[o,i]=[r[n-2],r[n]],a=i?`write ${i.label} on the strip`:e;
return o?{...t,ie:o.label,sr:null,tn:l,Tn:e,pt:!1,rest:a}:{...t,rest:[t.rest,a].filter(ny).join(E)}})(O,d,_,C),F={use:N,As:(({sr:e},t,{ft:n})=>{var r;let l=null!=(r=e&&t.get(e))?r:[];if(1!==
l.length)return null;let o=l[0].piece;return o.he!==o._e||o.Ne.length+o.ve.length>0?null:n.plankWidth-o.he-n.kerf})(N,i.ye,y),step:A,units:j},W=((t,n,r)=>{let{use:l,step:o,units:i}=r,a=l.tn-n>=o,u=
t.c.filter(n=>B===n?!aV(t,r):en!==n||e===l.ie||a),s=l.pt&&a&&u.length>0&&!u.includes(en)?[en,...u]:u,f=aG(n,l,i)&&s.includes(B)?B:en;return[...s.filter(e=>e===f),...s.filter(e=>e!==f)]})(d,T.length,
F),D=e===N.ie?null:aV(d,F)?to:"wider",q=v.get(d),K=d.He.filter(e=>!(null!=q&&q.He.includes(e)));return{...((e,t,n,r)=>{let l=nm(e.Rn,e=>-iT(e));return{label:t,w:e.w,$e:e.$e,rr:g.parseInt(t.split(L)[
1],10),length:n.length,oo:(({length:e,oo:t},n,r)=>{let l=t-(e-n);return l<r?0:l})(e,n.length,r),he:e.he,_e:e._e,Ve:e.Ve,q:e.q,ht:n.plank+1,gt:(({from:e},t,n)=>{if(m!==e)return aJ[e];let[r,l]=[!aD(t,
f,n),!aD(t,h,n)];return r&&l?aJ.whole:r?aJ.left:l?aJ.right:aJ.middle})(n,e,r),Ls:l,Fe:e.Rn.filter(e=>e!==l)}})(d,w,T,A),ie:N.ie,Tn:N.Tn,ar:N.ar,c:W,marks:[...((e,t,{use:r,units:l})=>{if(!e.includes(
B))return[];let o=B===e[0]&&e.includes(en)?r.tn:n(t,r.tn),i=aB[l];return o>=i?[]:[`Too short to rip on a table saw (under ${no(i,l,k)}): clamp it and cut along \
the line with a jigsaw or a hand saw.`]})(W,T.length,F),...(({y0:e,y1:t},{depth:n})=>t<=0||e>=n)(o,b)?["Slide in flat: between jambs it cannot be angled in."]:[],...null!=(s=null==(u=i.io)?void 0:
u.Ca(d))?s:[],...((e,t,n,r=()=>[])=>{let{units:l}=n,o=ni(l),i=e.Ne.filter(e=>P===e.kind),a=e.Ne.filter(e=>P!==e.kind);return[...((e,t,n,r)=>{let{layout:l,startEdge:o,step:i,zn:a}=n;if(to===a)return[
];let{y0:u,y1:s}=iC(e.shape),f=t.y1<=l.eo?t.y1-l.plankWidth:t.y0,h=f+l.plankWidth,p=e.Ne.length+e.He.length+e.ve.length===1?e.ve.filter(({ao:e})=>e).map(({side:e})=>e):[],c=[[R,o,u-f],[z,ep===o?eN:
ep,h-s]].filter(([e,,t])=>t>=i&&!p.includes(e));if(0===c.length||1===c.length&&(({Ne:e,ve:t,He:n},r)=>{let[l]=e;return e.length+t.length+n.length===1&&(null==l?void 0:l.kind)===P&&l.edge===r})(e,c[
0][0]))return[];let g=p.length>0?l.plankWidth-c[0][2]:s-u;if(a&&1===c.length)return[`Rip the strip to ${r(s-u)} wide, off its sawn edge (${c[0][0]} edge).`];let d=c.map(([e,t,n])=>`${r(n)} off the ${
e} edge (${t})`);return[`Rip to ${r(g)} wide: ${d.join(E)}.`]})(e,t,n,o),...e.Ne.length+e.ve.length+e.He.length>1?["Mark every cut on the whole rectangle before\
 making the first."]:[],...i.map(t=>((e,{end:t,edge:n,Y:r},l)=>{let{he:o,_e:i,Ne:a}=e;return a.filter(({kind:e})=>P===e).length>1?`Rip a taper off the ${n} edge: ${l(r)} off at the ${
t} end, nothing at the other.`:`Rip to a taper along the ${n} edge: ${l(o)} wide at the left end, ${l(i)} at the right.`})(e,t,o)),...a.map(e=>(({kind:e,end:t,edge:n,l:r,Y:l,Rs:o},i)=>{let a=`${tH(o,
1)}\xb0 off square`;return eE===e?`Cut off the ${t} corner at the ${n} edge: ${i(r)} along, ${i(l)} across.`:`Angle the ${t} end, ${a}: the longer edge (long point) is the ${R===n?z:R} edge, the ${
n} edge is ${i(r)} shorter.`})(e,o)),...r(e,n,o)]})({...d,He:K},o,{layout:b,startEdge:(({read:e,part:t=m})=>m===t?e.start.startEdge:eN)(x),step:A,units:j,zn:D,length:T.length},null==(p=i.io)?void 0:
p._a),...null!=(c=null==q?void 0:q.marks)?c:[],...(({nn:e},t)=>null===e?[]:[`Glue its ${e} end to ${t[0].label}: there is no lock.`])(d,_)],rest:N.rest}})(r,b(l),y.rows[v(l)],D),room:q(
l)})}return K}(p,void 0)).map(t=>{let n;return n=[...e===t.Tn?[]:[`Offcut of ${t.Tn}.`],...e===t.ie?[]:[`Strip of ${t.ie}.`]],[t.w,t.label,a1(t.length,u),a1(t.he,u),t.ht,aZ[t.gt],t.rest,[...n,...
t.marks].join(A)]}),...w]})({name:e,length:y.length.read,width:y.width.read},v,ur(p,x),x)}function uh(e){try{e()}catch{}}function up(e){let t=LockService.getDocumentLock();if(!t.tryLock(
1e4))throw Error("Somebody else is filling tabs of this spreadsheet just now. Wait a moment, then try again.");try{return e()}finally{uh(()=>SpreadsheetApp.flush()),t.releaseLock()}}var[uc,ug]=[
"plank-ledger","unfinished"],ud="plank-ledger-lines",um="plank-ledger-about",uw={"'":"\u2019","/":L,"\\":L,"[":"(","]":")","*":"x","?":b};function uk(e,t,n){var r,l;let o=uM(e,t);if(o.length<
2)return null!=(r=o[0])?r:null;let i=uE(n);return null!=(l=o.find(e=>uE(e.getName())===i))?l:o[0]}function uy(e,t){let n=e.getSheets(),r=e.insertSheet(uS(n,`Filling ${t}`),n.length);try{
r.addDeveloperMetadata(uc,ug)}catch(t){throw e.deleteSheet(r),t}return r}function ux(e,{memory:t,about:n}){ub(e,ud,t),ub(e,um,n)}function u$(t){var n,r;let l=new i(t.getDeveloperMetadata().map(t=>{
var n;return[t.getKey(),null!=(n=t.getValue())?n:e]}));return{memory:null!=(n=l.get(ud))?n:e,about:null!=(r=l.get(um))?r:e}}function uv(t){return t.createDeveloperMetadataFinder().withKey(uc).find(
).flatMap(t=>{var n;let r=t.getLocation().getSheet(),l=null!=(n=t.getValue())?n:e;return r&&l!==ug?[{mark:l,sheet:r}]:[]})}function ub(e,t,n){let[r]=e.getDeveloperMetadata().filter(e=>e.getKey()===
t);r?r.setValue(n):e.addDeveloperMetadata(t,n)}function uL(e){for(let t of uM(e,ug))try{e.deleteSheet(t)}catch(r){let n=e.getSheets();if(n.filter(e=>!e.isSheetHidden()).length>1)throw r;n[
0].showSheet(),e.deleteSheet(t)}}function uE(t,n=100){let r=t.replace(/:/g," - ").replace(/[\s\p{Cc}]+/gu,A).replace(/['\x2f\\[\]*?]/g,e=>uw[e]).trim();if(r.length<=n)return r;let l=e;for(
let e of r){if(l.length+e.length>=n)break;l+=e}return`${l.trim()}\u2026`}function uS(e,t){let n=e.map(e=>e.getName().toLowerCase()),r=uE(t);for(let e=2;n.indexOf(r.toLowerCase())>=0;e++){let n=` (${
e})`;r=uE(t,100-n.length)+n}return r}function uM(e,t){let n=[];for(let r of uj(e,t)){let e=r.getLocation().getSheet();e&&n.push(e)}return n}function uj(e,t){return e.createDeveloperMetadataFinder(
).withKey(uc).withValue(t).find()}function uI(e){return up(()=>e.map(uA))}function uA([e,t]){let n=SpreadsheetApp.getActiveSpreadsheet(),r=n.getActiveSheet(),l=uy(n,ti);try{n.setActiveSheet(r);let o=
[SpreadsheetApp,n,l,r];for(let[t,n,r]of(o.push(Utilities,LockService,Session,HtmlService,eu,[]),e))o.push(o[t][n](...r.map(e=>(function e(t,n){if(K(t))return t.map(t=>e(t,n));let r=null==t?void 0:
t.known;return void 0===r?t:n[r]})(e,o))));return{answers:JSON.parse(em(t.map(e=>o[e])))}}catch(e){return{failed:c(e)}}finally{uh(()=>n.deleteSheet(l)),uh(()=>uL(n))}}function u_(e,t){if("speed"===
e){let e=eu.now();return uf(20,15,48,5),eu.now()-e}return"language"===e?["a\x01b".normalize().replace(/\p{Cc}/gu,L),eL([["a",1]]).a,[new a([1])].flatMap(e=>e[0])].join():void 0===t?uP(e):`${uP(
e)}, ${uP(t)}`}function uP(e){return K(e)?`[${e.map(uP).join()}]`:tb(e)?T:`${typeof e} ${e}`}function uT(e){let t=[1];for(let n of e){let e=[];(e=>{let t=[];for(let n=e;n>0;n=o(n/1e7))t.push(n%1e7);
return t.length>0?t:[0]})(n).forEach((n,r)=>{var l,i;let a=0;for(let u=0;u<t.length||a>0;u++){let s=(null!=(l=e[u+r])?l:0)+n*(null!=(i=t[u])?i:0)+a;e[u+r]=s%1e7,a=o(s/1e7)}}),t=e}return t}var uO={
"too few walls":({found:e})=>`The room has ${nx(e,ee)}. Give at least three.`,"turn missing":({v:e})=>`Wall ${e}: the turn at its end is blank. ${nb}`,"turns do not add up":({found:e,wanted:t})=>
`The turns add up to ${tH(e,2)} degrees; all the way round a room it is ${t}. Check where R and L stand.`,"does not close":({right:t,far:n,by:l,ir:o,lo:i},a)=>{var u,s,p,c;
return`The walls do not meet: the last ends ${a(l)} from the start of wall 1 (${u=t,s=n,p=a,[0===t?e:`${a(r(t))} to the ${t>0?h:f}`,0===n?e:`${a(r(n))} ${n>0?"beyond it":"nearer"}`].filter(ny).join(
E)}). Up to ${a(o)} is spread over the walls; check their lengths and turns.${0===(c=i).length?e:` If they are right, the room is out of square: add diagonals b\
etween corners (wall 1 starts at corner 1), best ${i.map(([e,t])=>`${e} to ${t}`).join(E)}.`}`},"walls meet":({$s:[e,t]})=>e===t?`Wall ${e} has no length where \
it meets the next. Check the wall lengths and turns.`:`Wall ${e} and wall ${t} cross or touch. Check the wall lengths and turns.`,diagonal:({found:e,va:t,Ba:n},r)=>`The diagonal is ${r(
e)}. With these walls it is more than ${r(t)} and less than ${r(n)}.`};function uC(e,t,n,r){return rg(rc({length:{given:e,read:n9(n8(s))},width:{given:t,read:n9(n8(s))},waste:uz(n)},r,(e,t)=>{var n,
r,l;let o=(r=e.length.read,l=e.width.read,{count:{n:r.n*l.n,d:r.d*l.d},unit:1});return null!=(n=n7(e.length,e.width,t))?n:nO(o,uF(e.waste),t)}))}function uR(l,a,u){let f=new i;return rg(rc({waste:uz(
a)},u,(i,a)=>{var u;let h;return nO({count:{n:(h=null!=(u=f.get(a))?u:((l,i)=>{let a=(e=>{if(e.length<3)return aL({code:"too few walls",found:e.length});let l=e.findIndex((t,n)=>null===t.turn&&n<
e.length-1);if(l>=0)return aL({code:"turn missing",v:l+1});let i=ng(e,e=>{var t;return null!=(t=e.turn)?t:0}),a=i<0?-360:360;return nh(e).turn&&r(i-a)>1?aL({code:"turns do not add up",found:i,wanted:
a}):(e=>{var l,i,a;let u,s,f,h,p,c=(u=0,s=e.map(({turn:e})=>{let t=u;return u-=null!=e?e:0,t}),e.map(({length:e},t)=>{let{cosine:n,dt:r}=i3(s[t]);return{length:e,ux:n,uy:r}})),g=c.reduce(({x:e,y:t},
n)=>({x:e+n.length*n.ux,y:t+n.length*n.uy}),{x:0,y:0}),d=tL(ev(g.x*g.x+g.y*g.y)),m=0>ng(e,e=>{var t;return null!=(t=e.turn)?t:0})?-1:1,w=0+m*tL(g.x),k=0+m*tL(g.y),y=n(16256,o(ng(c,e=>e.length)/200)),
x=0>=iT((l=((e,t,n)=>{if(0===n.x&&0===n.y)return e;let[r,l,o]=[0,0,0];for(let{length:e,ux:n,uy:i}of t)r+=e*n*n,l+=e*n*i,o+=e*i*i;let i=r*o-l*l,a=(o*n.x-l*n.y)/i,u=(r*n.y-l*n.x)/i;return e.map(e=>
t.includes(e)?{...e,length:e.length*(1-e.ux*a-e.uy*u)}:e)})(c,(f=c.filter(({ux:e,uy:t})=>0!==e&&0!==t)).some(e=>f.some(t=>r(e.ux*t.uy-e.uy*t.ux)>.5))&&d<=508*f.length?f:c,g),h=0,p=0,i=l.map(({length:
e,ux:t,uy:n})=>{let r={x:tL(h),y:tL(p)};return h+=e*t,p+=e*n,r})))?i:i.map(({x:e,y:t})=>({x:0-e,y:0-t}));if(d>y)return aL({code:ta,right:w,far:k,by:d,ir:y,lo:x.length<=40&&(a=x).length>=3&&null===iN(
a)?(e=>{let l=0>iT(e),o=e.map((e,t)=>t),i=[];for(;o.length>3;){let a=((e,n,l)=>{let o=-1,i=0;return n.forEach((a,u)=>{let s=e[nc(n,u)],f=e[a],h=e[np(n,u)];if(iA(s,f,h)*(l?-1:1)<=0||n.some(t=>((e,t,n,
r)=>{if(e===t||e===n||e===r)return!1;let l=[iA(t,n,e),iA(n,r,e),iA(r,t,e)];return iR(t,r,e)||l.every(e=>e>=0)||l.every(e=>e<=0)})(e[t],s,f,h)))return;let p=((e,n,l)=>{let o=(e,t)=>(e.x-t.x)**2+(e.y-
t.y)**2;return r(2*iT([e,n,l]))/t(o(e,n),o(n,l),o(l,e))})(s,f,h);p>i&&([o,i]=[u,p])}),o})(e,o,l);if(a<0)break;let u=nc(o,a),s=np(o,a);i.push([n(u,s)+1,t(u,s)+1]),o.splice(a,1)}return i})(x):[]});
let $=iN(x);if($)return aL({code:"walls meet",$s:[$[0]+1,$[1]+1]});let v=d>508?[{code:"misfit spread",right:w,far:k,by:d}]:[];return{Un:null,value:{corners:x,St:e.map(e=>e.length),Fe:[],notes:v}}})(
e)})(((t,n)=>{let r=rk(t),l=rx(r,e=>e.every(nX));if(0===l)throw Error(n$.On("walls"));if(l>1e3)throw Error(n$.jn("walls",l,1e3));if(2!==r[0].length)throw Error(n$._o(ry(r)));let o=[],i=(e,t,n)=>nZ(
e)?(o.push(e.says(t)),n):e,a=n0(s),u=r.slice(0,l).map(([t,r],l)=>({length:i(a(nX(t)?e:t,n),`Wall ${l+1}`,0),turn:i((e=>{if(nX(e))return null;let t=nK(ru(e));return null!=t?t:{says:t=>n$.turn(t,nQ(
e))}})(r),`Turn after wall ${l+1}`,null)}));if(o.length>0)throw Error(n$.Mn(o[0],o.length-1));return u})(l,i));if(null===a.Un)return r(iT(a.value.corners));let[u,...f]=a.Un,h=ta===u.code?{...u,lo:[
]}:u;throw Error(n$.Mn((0,uO[h.code])(h,e=>no(e,i,s)),f.length))})(l,a),f.set(a,h),h),d:1},unit:1},uF(i.waste),a)}))}function uN(e,n,r,l){return rg(rc({area:{given:e,read:rt},box_coverage:{given:n,
read:rt},waste:uz(r)},l,e=>{var n,r,l;let i=(n=e.area,r=e.box_coverage,l=e.waste,((e,n)=>{let r=e.reduce((e,t)=>e*t)/n.reduce((e,t)=>e*t);if(!(r<=1e6))return 1/0;let l=uT(e),i=t(0,o(r)-1);for(;((e,
n)=>{var r,l;for(let o=t(e.length,n.length)-1;o>=0;o--){let[t,i]=[null!=(r=e[o])?r:0,null!=(l=n[o])?l:0];if(t!==i)return t<i}return!1})(uT([i,...n]),l);)i+=1;return i})([n.count.n,n.unit,l.n+l.d,
r.count.d],[r.count.n,r.unit,l.d,n.count.d]));return i<=1e6?i:nJ("box_coverage",e=>n$.go(e,1e6))}))}function uz(e){return{given:e,read:rr,B:()=>({n:0,d:1})}}function uF({n:e,d:t}){return{n:e+t,d:
t}}function uW(e,t,{rules:n,units:r,Ze:l}){let o=e.map(e=>ad(e,t,n,r)),i=o.find(e=>d==typeof e);if(void 0!==i)return{name:t.name,problem:i};let{plan:a,xe:u}=ij(o.filter(e=>d!=typeof e),{Ze:l});
return{C:t,plan:a,xe:u}}function uD(e,{C:t,plan:o,xe:i},a){var u;let s,{plankLength:f,plankWidth:h,planksPerBox:p,pricePerBox:c}=t,g=o.f+a.spare,d=null===p?null:l(x(g/p*1e6)/1e6),m=2*a.expansionGap,
w=ng(e,({length:e,width:t})=>(e-m)*(t-m));return{name:t.name,r:g,boxes:d,waste:1-w/((null===d||null===p?g:d*p)*f*h),Cs:n(...i.rows.flatMap(e=>e.runs.flat().map(e=>e.length))),_s:null===d||null===c?
null:(s=x(1e6*r(u=d*c*100))/1e6,u<0?-x(s):x(s)),proof:nU(o)}}var uq=["Product","Planks","Boxes","Waste","Shortest piece","Price","Note"];function uK(t,n,r,o,i){var a;let f,h,p,c,g=rd({},i).units,d=
rk(r),m=d.filter(e=>!e.every(nX));if(0===m.length)throw Error(n$.On(tu));if(d[0].length<3||d[0].length>5)throw Error(n$.Oo(ry(d)));if(m.length>20)throw Error(n$.Mo(m.length,20));if(m.every(([e])=>nn(
ru(e),u,g).ok))throw Error(n$.Do());let w=rc({length:{given:t,read:n9(n0(s))},width:{given:n,read:n9(n0(s))}},g,(e,t)=>{var n;let r={length:e.length.read,width:e.width.read};return null!=(n=n7(
e.length,e.width,t))?n:{size:r}}).flat().flatMap(t=>e===t?[]:[t.size]).map((e,t)=>({name:`Room ${t+1}`,...e}));if(0===w.length)throw Error(n$.On(O));let k=m.map((t,n)=>((t,n,r)=>{let l=n=>nX(t[n])?e:
ru(t[n]),o=nY(t[0])||`Product ${n+1}`,i=nz(r),a=i.Pt("plankLength","Plank length",l(1),512e4),s=i.Pt("plankWidth","Plank width",l(2),64e4),f=i.count(ts,tf,l(3));0===f&&i.ne(ts,n$.hr(tf));let h=
i.price("pricePerBox","Price of a box",l(4)),p=void 0===t.find(tb)?[]:[n$.length("A cell of its row",e,T,u,r)],[c,...g]=[...p,...i.sn.map(({text:e})=>e)];return c?{name:o,problem:p.length>0?p[0]:
n$.Mn(c,g.length)}:{name:o,...nB(a,s),te:0,planksPerBox:f,pricePerBox:h}})(t,n,g)),y=(f=ng(w,e=>e.width),ng(k,e=>eS in e?0:l(f/e.plankWidth)));if(y>1500)throw Error(n$.kr(tu,y,1500));let x=(a=ur(o,
g),c=3e7/(p=(h=k.map(e=>eS in e?e:uW(w,e,{rules:a,units:g,Ze:1e7/k.length}))).map(e=>"plan"in e&&M!==e.plan.re)).filter(Boolean).length,h.map((e,t)=>{if(eS in e)return e;if(!p[t])return uD(w,e,a);
let n=uW(w,e.C,{rules:a,units:g,Ze:c});return uD(w,"plan"in n&&n.plan.f<=e.plan.f?n:e,a)})),$=d.map(t=>t.every(nX)?uq.map(()=>e):((t,n)=>{if(eS in t)return[t.name,e,e,e,e,e,t.problem];let{name:r,r:l,
boxes:o,waste:i,Cs:a,_s:u,proof:s}=t;return[r,l,null!=o?o:e,i,a1(a,n),null===u?e:u/100,s]})(x[m.indexOf(t)],g));return[uq,...$]}function uB({rows:e,plankLength:t}){return e.flatMap((e,n)=>e.runs.map(
({x:r,length:l},o)=>({rowIndex:n,E:o,x:r,length:l,width:e.width,o:l<=t})))}function uG(e,t,n){return(e.length-t-1)%n+1}function uV(e,t,n){return(e.length-t-uG(e,t,n))/n}function uH(e,n,{plankLength:
r,minPiece:l}){return!(n<t(1,l))&&!(n>r)&&!(n>=e.length)&&uG(e,n,r)>=l}function uU(e,t,n){if(e.o)return[];let r=[];for(let l=e.x+t;l<e.x+e.length;l+=n)r.push(l);return r}function uJ(e,t,n,r){
return v===n?e.length:h===n?t:uG(e,t,r)}function uZ(e,n){let l,o,i;return[...(l=n.f,o=n.rows.map(({runs:e})=>({runs:e.map(e=>e.map(e=>({length:e.length,from:e.from,plank:(({stock:e,plank:t})=>
void 0===e?t:l++)(e),...e.$&&{$:e.$}})))})),i=n.P.filter(({rule:t,rowIndex:n})=>N!==t||0===uQ(e,n).length),rF(e.job,{rows:o,f:l,u:0,re:j,s:0,P:i})),...(({job:e,stock:n},{rows:r})=>{let l=n.map(()=>[
]),o=[];return r.forEach((t,n)=>{for(let r of t.runs)for(let[t,i]of r.entries()){if(void 0===i.stock)continue;let a={piece:i,width:e.rows[n].width,qn:t===r.length-1};l[i.stock]?l[i.stock].push(a):
o.push(`row ${n+1}: there is no piece ${i.stock} in hand`)}}),l.forEach((r,l)=>{var i;let{length:a,ends:u,width:s=e.plankWidth}=n[l],p=`piece ${l} in hand`,c=e.kerf*t(0,r.length-1),g=(null!=(i=
e.play)?i:0)*r.slice(1).filter(({qn:e})=>e).length,d=r.reduce((e,{piece:t})=>e+t.length,0)+c+g;for(let e of(d>a&&o.push(`${p}: ${d} is cut from ${a}`),r.some(e=>e.width>s)&&o.push(`${
p}: a row is wider than it`),[f,h])){let t=r.filter(({piece:t})=>t.from===e).length;t>+(u===e||G===u)&&o.push(`${p}: ${t} pieces keep its ${e} end`)}r.some(({piece:e})=>m===e.from)&&o.push(`${
p}: it is no whole plank`)}),o})(e,n),...((e,{rows:t,P:n})=>{let{job:l}=e;return t.flatMap(({runs:t},o)=>{let i=uQ(e,o);return n.some(e=>N===e.rule&&e.rowIndex===o)?[]:t.flatMap((e,t)=>{let n=l.rows[
o].runs[t].x;return e.slice(0,-1).flatMap(({length:e})=>{n+=e;let t=i.filter(e=>r(e-n)<l.minStagger),a=`row ${o+1}: a joint at ${n}`;return t.map(e=>`${a} is nearer than ${l.minStagger} to ${
e} of the row that lies`)})})})})(e,n),...(({whole:e=0},{f:n,Wn:r,u:l,re:o})=>{let i=[];return r!==t(0,n-e)&&i.push(`short ${r}, planks ${n}, in hand ${e}`),(l>n||M===o&&l!==n)&&i.push(`bound ${
l}, planks ${n}`),i})(e,n)]}function uX(e,t){let[n]=uZ(e,t);if(void 0===n)return t;let r=rM(e.job,e);throw Error(`Internal: the plan of the rest breaks a law: ${n}. Please report it, with the job: ${
r}`)}function uQ({job:e,before:t},n){let{room:r}=e.rows[n];return e.rows.slice(0,n).some(e=>e.room===r)?[]:t.filter(e=>e.room===r).flatMap(({joints:e})=>e)}function uY(e,t){return e.map((e,t)=>({...
e,index:t})).filter(({ends:e})=>e===t||G===e).sort((e,t)=>e.length-t.length).map(({index:e})=>e)}function u0(e,t){let n=-1;return e.forEach((r,l)=>{t(r)&&(n<0||(({Q:e,lengths:t})=>e-nd(t))(r)<(({Q:e,
lengths:t})=>e-nd(t))(e[n]))&&(n=l)}),n}function u1({job:e,before:t},n){var r,l,o;let{room:i}=e.rows[n];return(null==(r=e.rows[n-1])?void 0:r.room)===i?[]:null!=(o=null==(l=t.find(e=>e.room===i))?
void 0:l.joints)?o:[]}var u2=[40,20,10,4,0],u3=class{constructor(e,t,n){this.onward=e,this.runs=t,this.p=lp(1);let l=new i;for(let o of(this.H=t.map(n=>((e,t,n)=>{let{rows:l}=e.job,{rowIndex:o}=n,{
room:i}=l[o],a=e=>t.flatMap((t,n)=>(t=>r(t.rowIndex-o)===e&&l[t.rowIndex].room===i)(t)?[n]:[]);return{near:a(1),far:a(2),Vs:u1(e,o),Hs:(({job:{rows:e},before:t},n)=>{var r,l;let{room:o}=e[n],i=
t.find(e=>e.room===o);return i&&(null==(r=e[n-2])?void 0:r.room)!==o?(null==(l=e[n-1])?void 0:l.room)===o?i.joints:i.joints2:[]})(e,o)}})(e,t,n)),this.laid=t.map(({rowIndex:e,E:t},r)=>{let o=n[
e].runs[t];return o.map((e,t)=>{let n=this.Ws(l,e),i={piece:e,isLast:t===o.length-1,place:r,source:n};return n.c.push(i),i})}),this.sources=[...l.values()],this.shared=this.laid.flat().filter(({
piece:e})=>m!==e.from),this.En=new a(e.job.rows.length),this.sources))this.count(o,1)}In(){let e=0;for(let t of this.En)e+=2*t*t+t;return this.H.forEach((t,n)=>{e+=12*this.ur(n)/2}),e}Ds(e){if(0===
this.shared.length)return;let t=this.shared[lc(this.p,this.shared.length)],{c:n,stock:r}=t.source,l=n[lc(this.p,n.length)],o=(l!==t?l.place:void 0===r?t.place:0)+lc(this.p,9)-4;o<0||o>=
this.runs.length||o===t.place||(0===lc(this.p,2)?this.Gs(t,o,e):this.Js(t.place,o,e))}rows(){let e=new i,t=this.onward.job.rows.map(()=>[]);return this.runs.forEach(({rowIndex:n},r)=>{let l=
this.laid[r].map(({piece:{length:t,from:n},source:r})=>void 0!==r.stock?{length:t,from:n,plank:-1,stock:r.stock}:(e.has(r)||e.set(r,e.size),{length:t,from:n,plank:e.get(r)}));t[n].push(l)}),t.map(e=>
({runs:e}))}Ws(e,{plank:t,stock:n}){var r;let{job:l,stock:o}=this.onward,i=void 0===n?`plank ${t}`:`stock ${n}`,{length:a,width:u=l.plankWidth}=void 0===n?{length:l.plankLength,width:l.plankWidth}:o[
n],s=null!=(r=e.get(i))?r:{Q:a,width:u,stock:n,c:[]};return e.set(i,s),s}Gs(e,t,n){let{from:r}=e.piece,l=this.laid[t].find(({piece:t,source:n})=>t.from===r&&n!==e.source);l&&this.uo([e.source,
l.source],[],n,()=>{let{source:t}=e;u4(e,l.source),u4(l,t)})}Js(e,t,n){if(!this.Ks(this.runs[e],this.runs[t]))return;let r=nk([...this.laid[e],...this.laid[t]].map(({source:e})=>e)),l=()=>{for(
let n of([this.laid[e],this.laid[t]]=[this.laid[t],this.laid[e]],[e,t]))for(let e of this.laid[n])e.place=n};this.uo(r,[e,t],n,l)}Ks(e,t){let{rows:n}=this.onward.job;return e.x===t.x&&e.length===
t.length&&e.width===t.width&&n[e.rowIndex].room===n[t.rowIndex].room}uo(e,t,n,r){let l=ng(t,e=>this.ur(e)),o=0;for(let t of e)o+=this.count(t,-1);r();let i=e.every(e=>this.$n(e))&&t.every(e=>this.js(
e));for(let t of e)o+=this.count(t,1);if(o+=12*(ng(t,e=>this.ur(e))-l),!(i&&o<=n)){for(let t of e)this.count(t,-1);for(let t of(r(),e))this.count(t,1)}}count({c:e,stock:r},l){let o=({place:e})=>
this.runs[e].rowIndex,i=void 0===r?n(...e.map(o)):0,a=t(...e.map(o)),u=0;for(let e=i;e<a;e++){let t=this.En[e];this.En[e]=t+l,u+=2*((t+l)*(t+l)-t*t)+l}return u}$n({c:e,Q:t,width:n}){let{kerf:r,play:
l=0}=this.onward.job;e.sort((e,t)=>e.place-t.place||g(e.isLast)-g(t.isLast));let o=r*(e.length-1);return e.forEach(({piece:e,isLast:t,place:r},i)=>{o+=e.length+(t&&i>0?l:0),this.runs[r].width>n&&(o=
1/0)}),o<=t}bt(e){return uU(this.runs[e],this.laid[e][0].piece.length,this.onward.job.plankLength)}js(e){let{near:t,Vs:n}=this.H[e],r=this.bt(e),{minStagger:l}=this.onward.job;return!(rV(r,n)<l)&&
t.every(e=>rV(r,this.bt(e))>=l)}ur(e){let{far:t,Hs:n}=this.H[e],{alignedDistance:l}=this.onward.job,o=this.bt(e),i=e=>ng(o,t=>e.filter(e=>r(t-e)<l).length);return t.reduce((e,t)=>e+i(this.bt(t)),i(
n))}};function u4(e,t){e.source.c.splice(e.source.c.indexOf(e),1),t.c.push(e),e.source=t}function u6(e,t,n){for(let r=e.length-1;r>=0;r--)if(!(e[r]>t||e[r]===n))return e.splice(r,1),!0;return!
1}var u5=[.25,.5,.75,1];function u8(e,r,o={},u=i$){let{job:s}=e;if(0===s.rows.length)return{rows:[],f:0,Wn:0,u:0,re:M,P:[]};let p={...o,bs:!1},c=u(s,p),g=e.before.some(({joints:e})=>e.length>0);if(
0===e.stock.length&&!g&&!r)return uX(e,{...iy(s,c),Wn:u7(c.f,e)});let d=s.ripPairs.length>0?u({...s,ripPairs:[]},p):c,w=uB(s),k=(({job:e,stock:n},r,o)=>{let i=ng(o,e=>e.length)-ng(n,e=>e.length);
return t(0,r-n.length,l(i/e.plankLength))})(e,c.u,w),y=r?[r]:[],x=[d.rows,...y].map(e=>w.map(({rowIndex:t,E:n})=>e[t].runs[n][0].length)),v=(w.length<=12?u5:[]).map(e=>w.map((t,n)=>l(s.plankLength*(
e*(n+1)%1||1)))),b=[...x,...v].flatMap(r=>{let l=((e,t,r)=>{let{job:l}=e,{minStagger:o,plankLength:i}=l;return t.forEach((a,u)=>{if(a.o)return;let{before:s,after:f}=se(e,t,r,a.rowIndex),h=(e,t)=>rV(
uU(a,e,i),t);if(uH(a,r[u],l)&&h(r[u],s)>=o)return;let p=r[u],c=-1;for(let e=1;e<=i;e++){if(!uH(a,e,l))continue;let t=n(o,h(e,s)),r=n(o,h(e,f));t*(o+1)+r>c&&(c=t*(o+1)+r,p=e)}r[u]=p}),r})(e,w,r);
return[l,((e,n,r)=>{let{job:l,stock:o}=e,i=6e5/t(1,n.length),a=st(e,n,r);for(let t=0;t<12&&i>0;t++){let u=!1;if(n.forEach((s,f)=>{if(s.o||i<=0)return;let{before:h,after:p}=se(e,n,r,s.rowIndex),c=[...
h,...p],g=r[f];for(let u of(({plankLength:e,kerf:t,minPiece:n,play:r=0},l,o,i,a)=>{let u=[],s=new $([n,e,...a]);for(let f of(o.forEach((n,l)=>{n.o||(s.add(e-t-uG(n,i[l],e)),s.add(e-t-r-uG(n,i[l],e)),
u.push(e-t-i[l],e-t-r-i[l]))}),[...u,...a,...a.map(e=>e-r),n,e]))f>0&&s.add((l.length-f-1)%e+1);return[...s]})(l,s,n,r,o.map(({length:e})=>e))){if(u===r[f]||!uH(s,u,l)||rV(uU(s,u,l.plankLength),c)<
l.minStagger)continue;i-=1;let o=r[f];r[f]=u;let h=st(e,n,r);h<a||h===a&&(u+f+t)%7==0?a=h:r[f]=o}u||(u=r[f]!==g)}),!u)break}return r})(e,w,[...l])].map(t=>((e,t,r,l)=>{let{rows:o,f:u}=((e,t,n)=>{let{
job:r,stock:l}=e,o=l.map(({length:e,width:t=r.plankWidth})=>({Q:e,width:t,lengths:[],Pn:0})),u=[],s=t.map(()=>[]);return((e,t,n,r)=>{let{job:l,stock:o}=e,{plankLength:i}=l,u=t.flatMap((e,t)=>e.o?[]:[
{run:e,index:t}]),s=(e,n)=>({run:e,length:n,width:t[e].width}),p=u.map(({index:e})=>s(e,n[e])),c=u.map(({run:e,index:t})=>s(t,uG(e,n[t],i))),{vs:g,Bs:d,Us:w}=((e,t,n,r)=>{var l;let o,i,u,s,p=uY(r,h),
c=uY(r,f),{plankLength:g,kerf:d,play:m=0}=e,w=(t,n,r)=>{var l;return t.length<g&&t.length+r<=n.length&&t.width<=(null!=(l=n.width)?l:e.plankWidth)},k=t.map(e=>{let t=[];return p.forEach((l,o)=>{w(e,
r[l],0)&&t.push(n.length+o)}),n.forEach((n,r)=>{let l=e.run<=n.run?m:0;e.length+d+n.length+l<=g&&t.push(r)}),t});for(let e of c)k.push(n.flatMap((t,n)=>w(t,r[e],m)?[n]:[]));let{Ns:y,size:x}=(o=new a(
l=n.length+p.length).fill(-1),i=new a(k.length).fill(-1),u=(e,t)=>{for(let n of k[e])if(!t[n]&&(t[n]=1,!(o[n]>=0&&!u(o[n],t))))return o[n]=e,i[e]=n,!0;return!1},s=0,k.forEach((e,t)=>{u(t,new ek(l))&&
(s+=1)}),{Ns:[...i],size:s}),$=n.map(()=>-1);return y.slice(t.length).forEach((e,t)=>{e>=0&&($[e]=c[t])}),{vs:t.map((e,t)=>y[t]<n.length?y[t]:-1),Bs:t.map((e,t)=>{let r;return(r=y[t])>=n.length?p[r-
n.length]:-1}),Us:$,hn:x}})(l,p,c,o),k=c.map(()=>-1),y=(e,t,n,l)=>{let o=r.r[n];return o.lengths.push(e),l&&(o.Pn+=1),{length:e,from:e===i?m:t,plank:n}},x=()=>r.r.push({Q:i,width:l.plankWidth,
lengths:[],Pn:0})-1,$=(e,t,n,o)=>{let i=r.lr[n],{kerf:a,play:u=0}=l;return e+(i.lengths.length>0?a+u:0)>i.Q-nd(i.lengths)?null:(i.lengths.push(e),o&&(i.Pn+=1),{length:e,from:t,plank:-1,stock:n})};
u.forEach(({run:e,index:t},n)=>{let{length:l}=p[n],o=d[n]>=0?$(l,h,d[n],!1):null,a=o?-1:x();g[n]>=0&&a>=0&&(k[g[n]]=a);let u=null!=o?o:y(l,h,a,!1),s=nw(uV(e,l,i),()=>y(i,m,x(),!1));r.pieces[t]=[u,...
s,null]}),u.forEach(({index:e},t)=>{let{length:n}=c[t],l=w[t]>=0?$(n,f,w[t],!0):null,o=k[t]>=0?k[t]:-1;r.pieces[e][r.pieces[e].length-1]=null!=l?l:y(n,f,o>=0?o:x(),!0)})})(e,t,n,{lr:o,r:u,pieces:s}),
((e,t,{lr:n,r,pieces:l})=>{let{plankLength:o}=e;for(let{run:i,index:a}of t.flatMap((e,t)=>e.o?[{run:e,index:t}]:[]).sort((e,t)=>t.run.length-e.run.length)){let{length:t}=i,u=n=>i.width<=n.width&&(({
kerf:e,play:t=0},{lengths:n,Pn:r},l)=>{let o=n.reduce((e,t)=>e+t,l);return 0===n.length?o:o+e*n.length+t*(r+1)})(e,n,t)<=n.Q,s=t===o?m:S,f=t<o?u0(n,u):-1,h=f<0&&t<o?u0(r,u):-1,p=h>=0||f>=0?h:r.push({
Q:o,width:e.plankWidth,lengths:[],Pn:0})-1,c=f>=0?n[f]:r[p];c.lengths.push(t),c.Pn+=1,l[a]=[f>=0?{length:t,from:s,plank:-1,stock:f}:{length:t,from:s,plank:p}]}})(r,t,{lr:o,r:u,pieces:s}),{rows:(({
rows:e},t,n)=>{let r=new i,l=e=>e.plank<0?e:(r.has(e.plank)||r.set(e.plank,r.size),{...e,plank:r.get(e.plank)}),o=e.map(()=>[]);return t.forEach((e,t)=>{o[e.rowIndex].push(n[t].map(l))}),o.map(e=>({
runs:e}))})(r,t,s),f:u.length}})(e,t,r),s=((e,t,r)=>{let{minPiece:l,minStagger:o,plankLength:i}=e.job;return t.flatMap((a,u)=>{if(a.o)return[];let{rowIndex:s,E:f}=a,h=n(r[u],uG(a,r[u],i)),{before:p}=
se(e,t,r,s),c=rV(uU(a,r[u],i),p),g={rowIndex:s,E:f};return[...h<l?[{...g,rule:ei,found:h,wanted:l}]:[],...c<o?[{...g,rule:N,found:c,wanted:o}]:[]]})})(e,t,r),p=0===s.length&&u===l?M:j;return{rows:o,
f:u,Wn:u7(u,e),u:n(l,u),re:p,P:s}})(e,w,t,k))}),L=u9(e,y,k),E=[...L,...b].reduce((e,t)=>t.P.length<e.P.length||t.P.length===e.P.length&&t.f<e.f?t:e);return uX(e,E.P.length>0||L.includes(E)?E:{...E,
rows:((e,t,r)=>{let l=new u3(e,t,r),o=l.In(),i=n(4e4,600*t.length)/u2.length;for(let e of u2)for(let t=0;t<i;t++)l.Ds(e);return l.In()<o?l.rows():r})(e,w,E.rows)})}function u9(e,t,r){return t.map(t=>
{let l,o;return o=(l=new $(t.flatMap(({runs:e})=>e.flat()).filter(({stock:e})=>void 0===e).map(({plank:e})=>e)).size)===r?M:j,{rows:t,f:l,Wn:u7(l,e),u:n(r,l),re:o,P:[]}}).filter(t=>0===uZ(e,
t).length)}function u7(e,{whole:n=0}){return t(0,e-n)}function se(e,t,n,r){let{rows:l,plankLength:o}=e.job,i=e=>t.flatMap((t,i)=>t.rowIndex===r+e&&l[t.rowIndex].room===l[r].room?uU(t,n[i],o):[]);
return{before:[...u1(e,r),...i(-1)],after:i(1)}}function st({job:e,stock:t},n,r){let{plankLength:l}=e,o=[],i=[],a=0;return n.forEach((e,t)=>{e.o||(o.push(r[t]),i.push(uG(e,r[t],l)),a+=uV(e,r[t],
l))}),a+o.length+i.length-(({plankLength:e,kerf:t,play:n=0},r,l,o)=>{let i=(e,t)=>e-t,a=[...r].sort(i),u=[...l].sort(i),s=0;for(let{length:t,ends:r}of[...o].sort((e,t)=>e.length-t.length))(f!==r&&u6(
a,t,e)||h!==r&&u6(u,t-n,e))&&(s+=1);let p=0,c=0;for(let r=u.length-1;r>=0;r--){let l=e-t-n-u[r];for(;p<a.length&&a[p]<=l;)p+=1;p>c&&(c+=1)}return s+c})(e,o,i,t)}function sn({plank:e,stock:t,$:n}){
return`${null!=t?t:-1},${e},${null!=n&&n}`}var sr=e=>`${e} is 0. Rows count from 1.`,sl=e=>`${e} is more than 10,000: no floor has so many rows.`;function so({ta:e,firstRow:t,ra:n,oa:r,sa:l}){let o=
t===n?`row ${t}`:`rows ${t} to ${n}`,i=r.length>0?[`Cut today for tomorrow: ${r.join(E)}.`]:[],a=l.length>0?[`Waits for later: ${l.join(E)}.`]:[],u=r.length+l.length===0?[
"No offcut waits overnight."]:[];return[`Day ${e}: ${o}.`,...i,...a,...u].join(A)}var si=[ed,k,O,"keep",eH];function sa(e){return o(e)}var su=[f,h,G,v];function ss(l,o,a,p,c,d,w,y,x,b){let{values:L,
units:j}=rd({plank_length:{given:o,read:n3},whole_planks:{given:c,read:ro,B:()=>0},next_row:{given:d,read:sf,B:()=>1},rows_a_day:{given:x,read:ro,B:()=>0},lay_first:{given:b,read:ro,B:()=>0}},y),I=
un(w,j),A=L.plank_length;a6(A,I,j);let _=rw(et,l,n1(s),j);if(_.length>200)throw Error(n$.jn(et,_.length,200));let P=2*I.expansionGap,T=_.map(e=>t(I.markingStep,tS(e)-P)),{job:O,ke:C}=iS(T,tS(A),I),R=
sp(p,A,j),N={job:O,before:[{room:0,...sh("laid",a,C,j)}],stock:R.map(e=>sg(e,C)),whole:L.whole_planks},{next_row:z,rows_a_day:F,lay_first:W}=L;return(t=>{let{plan:l,units:o}=t,a=(({plan:e,ke:t,tr:n,
pieces:r,Sn:l})=>{let o=n.map(e=>({width:0,runs:[{x0:0,x1:e}]})),a=iM({rows:e.rows},o,0,t),u=new i;return e.rows.flatMap(({runs:[e]},t)=>e.map((e,n)=>{let o=`${l+t}-${n+1}`,i=u.get(e.plank),s=
void 0!==e.stock?`offcut marked ${r[e.stock].mark}`:void 0===i?"new plank":`offcut of ${i}`;return void 0===e.stock&&void 0===i&&u.set(e.plank,o),{row:l+t,label:o,length:a[t][0][n],piece:e,from:
s}}))})(t),s=(({plan:e,Sn:t},n)=>{var r;let l=e.rows.map((e,n)=>({w:t+n,Ue:[]})),o=new i;for(let{row:e,label:i,piece:a}of n){let n=void 0===a.stock?`plank ${a.plank}`:`offcut ${a.stock}`;for(let a=
null!=(r=o.get(n))?r:e;a<e;a++)l[a-t].Ue.push(i);o.set(n,e)}return l})(t,a),p=0===t.fo?[]:(({rows:t},r,l)=>{var o,i;let a=[],u=nh(t).w;for(let s=r;s<=u;s+=l){let r=n(u,s+l-1),f=null!=(i=null==(o=
t.find(({w:e})=>e===r))?void 0:o.Ue)?i:[],h=t=>g.parseInt(t.replace(/^.* /,e),10)<=r+l;a.push({ta:a.length+1,firstRow:s,ra:r,oa:f.filter(h),sa:f.filter(e=>!h(e))})}return a})({rows:s},t.Sn,t.fo),c=[(
({onward:t,plan:l,Sn:o,units:i,ke:a},u)=>{let[{length:s,piece:p,from:c}]=u,g=no(s,i,k),d=void 0===p.stock?"a new plank":`the ${c}`,w=m===p.from?"lay a whole plank":`cut ${d} to ${g}`,y=f===p.from||
h===p.from?`, keep its ${p.from} end`:e,x=l.rows[0].runs[0].slice(0,-1).map(({length:e},t,n)=>n.slice(0,t).reduce((e,t)=>e+t.length,e)),$=u1(t,0),v=n(...x.flatMap(e=>$.map(t=>r(e-t)))),b=v<1/0?
` The nearest joint is ${no(sa(v*a.unit),i,k)} from row ${o-1}.`:e,L=void 0===p.stock?e:" Or cut it from a new plank.";return`Row ${o}: ${w}${y}.${b}${L}`})(t,a),(({plan:e,onward:t})=>{let{f:n,Wn:r}=
e,{whole:l=0}=t,o=`${nx(n,u)} needed, ${l} left`;return r>0?`${o}: ${nx(r,u)} more to buy.`:`${o}: ${l-n} over.`})(t),...(({plan:e,onward:t,Sn:n,units:r,ke:l})=>{let o=e=>no(sa(e*l.unit),r,k);return[
...e.P.map(({rule:e,rowIndex:t,found:r,wanted:l})=>n$.Tt(`Row ${n+t}`,e,o(r),o(l))),...nV(e.P,t.job.plankLength)]})(t),...((t,n)=>{var r;let l,o,i,{mo:a,aa:u,wt:s,Sn:f}=t;if(u>0&&u<f)return[
`Lay first up to row ${u}: that row lies already, so this changes nothing.`];let h=n.find(({w:e})=>e===u);return a&&h?[(r=h.Ue,l=nx(r.length,"offcut goes","offcuts go"),o=0===r.length?
"no offcut goes over to the rest":`${l} over to the rest: ${r.join(E)}`,i=s?` With ${0===s.co?v:s.co} it takes ${nx(s.r,"more plank")}.`:e,`First up to row ${u}, then the other side: ${o}.${i}`)]:[
]})(t,s),...p.slice(0,1).map(so)],d=t=>[t,e,e,e,e];return[...c.map(d),[...si],...a.map(({row:e,label:t,length:n,piece:r,from:l})=>[e,t,a1(n,o),(({from:e})=>S===e?"any":e)(r),l]),...p.slice(1).map(e=>
d(so(e))),...M===l.re?[]:[d(`At most ${l.f-l.u} more than the fewest.`)]]})({...((e,t)=>{let n=t>0&&t<e.job.rows.length,r={Ze:4e7/(n?4:1)},l=u8(e,void 0,r);if(!n||l.P.length>0)return{plan:l,mo:n,wt:
null};let o=u9(e,((e,t,n={})=>{let{job:r,stock:l}=e,o=(e,t)=>({...r,rows:r.rows.slice(e,t),ripPairs:[]}),i=u8({...e,job:o(0,t)},void 0,n),a=(({job:e,before:t},n)=>{var r,l;let{room:o}=e.rows[
n.length-1],i=null!=(l=null==(r=t.find(e=>e.room===o))?void 0:r.joints)?l:[],a=t=>{var r;return(null==(r=e.rows[t])?void 0:r.room)===o?n[t].runs.flatMap((n,r)=>{let l=e.rows[t].runs[r].x;
return n.slice(0,-1).map(({length:e})=>l+=e)}):i};return[{room:o,joints:a(n.length-1),joints2:a(n.length-2)},...t.filter(e=>e.room!==o)]})(e,i.rows),u=(({job:e,stock:t},n,r)=>{let{plankLength:l,kerf:
o,play:i=0}=e,a=nw(r,()=>({length:l,ends:G})),u=n.flatMap(({runs:e})=>e.flat());return[...t,...a].flatMap((e,n)=>{let r=u.filter(e=>{var r;return(null!=(r=e.stock)?r:e.plank+t.length)===n&&!e.$}),l=
r.reduce((e,t)=>e-t.length-o,e.length-(r.length>0?i:0)),a=t=>(G===e.ends||e.ends===t)&&!r.some(({from:e})=>e===t||m===e),s=a(f)?a(h)?G:f:a(h)?h:v;return l>0?[{source:n,piece:{...e,length:l,ends:s}}]:
[]})})(e,i.rows,i.f),s=u.filter(({source:e})=>e<l.length);return[u,s].map(e=>{var r,u,s;let f,h=u8({job:o(t),before:a,stock:e.map(({piece:e})=>e)},void 0,n);return[...i.rows,...(r=h.rows,u=l.length,
s=i.f,f=t=>{if(void 0===t.stock)return{...t,plank:t.plank+s};let{source:n}=e[t.stock],{stock:r,...l}=t;return n<u?{...t,stock:n}:{...l,plank:n-u}},r.map(({runs:e})=>({runs:e.map(e=>e.map(
f))})))]})})(e,t,r),l.u),{best:i,wt:a}=((e,t)=>{let n=e.map(({rows:e})=>((e,t)=>{let n=e=>new $(e.flatMap(({runs:e})=>e.flat()).map(sn)),[r,l]=[n(e.slice(0,t)),n(e.slice(t))];return[...l].filter(e=>
r.has(e)).length})(e,t)),r=e.map((e,t)=>t),[l]=[...r].sort((t,r)=>e[t].f-e[r].f||n[t]-n[r]),[o]=[...r].sort((t,r)=>n[t]-n[r]||e[t].f-e[r].f),i=e[o].f-e[l].f,a=n[o]<n[l]?{co:n[o],r:i}:null;return{
best:e[l],wt:a}})([l,...o],t);return{plan:i,mo:n,wt:a}})(N,W-z+1),onward:N,ke:C,tr:T,pieces:R,Sn:z,units:j,fo:F,aa:W})}function sf(e){let t=ro(e);return 0===t?{says:sr}:w==typeof t&&t>1e4?{says:sl}:
t}function sh(e,t,n,r){let l=nX(t)?[]:rk(t).filter(e=>e.some(e=>!nX(e)));if(l.length>2){let t;throw Error((t=l.length,`${e} has ${t} rows of cells. Give the pie\
ces of one row of the floor, and below them those of the other row.`))}let[o=[],i=[]]=l.map((t,l)=>{let o=`${e}, row ${l+1}`,i=t.reduce((e,t,n)=>nX(t)?e:n,0);if(i>=500){let e;throw Error((e=i+1,`${
o}: ${e} pieces are more than any row has. Give the cells of that row, at most 500.`))}let a=t.slice(0,i+1).map((e,t)=>tS(sc(`${o}, column ${t+1}`,e,r))),u=0;return a.slice(0,-1).map(e=>(u+=e)/
n.unit)});return{joints:o,joints2:i}}function sp(t,n,r){if(nX(t))return[];let l=rk(t).flatMap((t,l)=>{if(t.every(nX))return[];let o=`in_hand, row ${l+1}`;if(t.length<3){let e;throw Error((e=t.length,
`in_hand has ${nx(e,"column")}. Three are wanted: what is written on the offcut, its length, its factory end.`))}if(tb(t[0]))throw Error(`${o}: what is written \
on the offcut is a date: a spreadsheet takes 8-2 for a day. Format the cell as plain text first, or write a letter.`);let i=nY(t[2]).toLowerCase().replace(/ (end|ends)$/,e),a=su.find(e=>e===i);if(!
a){let e;throw Error((e=nY(t[2]),`${o}: the factory end is "${e.slice(0,40)}". Type left, right, both or none.`))}let u=sc(o,t[1],r);if(u>n){let e,t;throw Error((e=aY(u,r),t=aY(n,r),`${
o}: an offcut of ${e} is longer than a plank of ${t}. Type the length it has, or leave its row blank.`))}return[{mark:nY(t[0])||`${l+1}`,length:u,ends:a}]});if(l.length>100)throw Error(n$.jn(th,
l.length,100));return l}function sc(e,t,n){if(nX(t))throw Error(n$.yr(e));let r=n1(u)(t,n);if(nZ(r))throw Error(r.says(e));return r}function sg({length:e,ends:n},r){let l=r.unit===r.markingStep?0:2*
r.markingStep;return{length:t(0,o((tS(e)-l)/r.unit+1e-9)),ends:n}}function sd(r,o,i,a,p,c,g){var d,m;let{values:w,units:y}=rd({run:{given:o,read:n1(s)},first_piece:{given:i,read:n1(u)},plank_length:{
given:a,read:n3}},g),$=un(c,y);a6(w.plank_length,$,y);let{job:b,ke:L}=iS([t($.markingStep,tS(w.run)-2*$.expansionGap)],tS(w.plank_length),$),[E]=uB(b),{joints:S,joints2:M}=sh("beside",p,L,y),j=e=>no(
x(e*L.unit),y,k),I=n(b.plankLength,(d=w.first_piece,m=L.unit,l(tS(d)/m-1e-9))),A=(t,{length:n,ends:r})=>{if(v!==t&&G!==r&&r!==t)return`it has no ${t} end`;let l=n-uJ(E,I,t,b.plankLength);if(l>=
0)return`fits, ${j(l)} over`;let o=((e,t,n,r,l,o)=>{if(uJ(t,n,r,e.plankLength)<=o)return n;if(v===r)return null;let i=n=>uH(t,n,e)&&uJ(t,n,r,e.plankLength)<=o&&rV(uU(t,n,e.plankLength),l)>=
e.minStagger;for(let t=1;t<=e.plankLength;t++){let e=[n-t,n+t].find(i);if(void 0!==e)return e}return null})(b,E,I,t,[...S,...M],n),i=null===o?e:`: begin the row with ${j(o)}, end it with ${j(uG(E,o,
b.plankLength))}`;return`${j(-l)} too short${i}`},_=sp(r,w.plank_length,y);if(0===_.length)throw Error(n$.On(th));return[["offcut","as first piece","as last piece"],..._.map(t=>{let n=sg(t,L);
return E.o?[t.mark,A(v,n),e]:[t.mark,A(h,n),A(f,n)]})]}var sm=["radial","quartersawn","quarter"],sw=["tangential","flatsawn","flat","plain","plainsawn","sawn","commercial","wood"];function sk(t){if(
w==typeof t)return D(t)?t:null;let n=tD(t),r=tK(n.replace(/^[-+] ?/,e));return d==typeof r||e!==r.rest?null:n.startsWith(L)?-tV(r.value):tV(r.value)}function sy(e,t){return e.s+=t,e.s<=
e.limit}function sx(e){let r,l=e.A.slice(),i=(r=l.map((e,t)=>t),e=>{let n=e;for(;n<l.length&&0===l[n];)n=t(n+1,r[n]);for(let l=e;l<n;){let e=t(l+1,r[l]);r[l]=n,l=e}return n}),a=[];for(let r=i(0);r<
l.length;r=i(r)){let u=[],s=e.Q;for(let a=r;a<l.length;a=i(t(a+1,((e,t)=>{let n=0,r=e.length;for(;n<r;){let l=n+r>>1;e[l]<=t?r=l:n=l+1}return n})(e.sizes,s)))){let t=n(l[a],o(s/e.sizes[a]));for(
let e=0;e<t;e++)u.push(a);s-=t*e.sizes[a]}let f=((e,t)=>{let r=1/0;for(let l=0;l<e.length;){let i=l;for(;e[i]===e[l];)i++;r=n(r,o(t[e[l]]/(i-l))),l=i}return r})(u,l);s$(l,{pattern:u,times:f}),a.push(
{pattern:u,times:f})}return a}function s$(e,{pattern:t,times:n}){for(let r of t)e[r]-=n}function sv(e){return ng(e,e=>e.times)}function sb(e){let t=[];return e.forEach((e,n)=>{for(let r=0;r<e;
r++)t.push(n)}),t}function sL(e,r,i){let a=(({sizes:e,A:t,Q:r})=>{let l=e.map((e,t)=>t).filter(e=>t[e]>0),i=[],a=l.map((a,u)=>{i[a]=u;let s=n(t[a],o(r/e[a])),f=new y(l.length);return f[u]=1/s,{
pattern:eM(s).fill(a),rn:t[a]/s,Gn:f}});return{wanted:l,ia:i,rows:a}})(e),u=0;for(;;){let s=(({wanted:e,rows:n},r)=>{let l=eM(r).fill(0);return e.forEach((e,r)=>{let i=ng(n,e=>e.Gn[r]);l[e]=t(0,o(
1e8*i))}),l})(a,e.sizes.length),f=((e,t,r)=>{let{sizes:l,A:i,Q:a}=e,u=l.map((e,t)=>t).filter(e=>t[e]>0&&i[e]>0);u.sort((e,n)=>t[n]*l[e]-t[e]*l[n]||e-n);let s=u.reduce((e,t)=>n(e,l[t]),1/0),f=l.map((
)=>0),h={pattern:[],se:0};return!function e(a,p,c){if(c>h.se&&(h={pattern:sb(f),se:c}),!sy(r,1))return!1;for(let r=a;r<u.length&&p>=s;r++){let a=u[r],s=l[a];if(!(s>p)){if(c+o(p*t[a]/s+.01)<=
h.se)return!0;for(let l=n(i[a],o(p/s));l>0;l--)if(f[a]=l,!e(r+1,p-l*s,c+l*t[a]))return!1;f[a]=0}}return!0}(0,a,0)?void 0:h})(e,s,i);if(!f||!sy(i,l(a.rows.length**2/8))||(u=t(u,l(ng(s,(t,n)=>t*e.A[
n])/f.se)))>=r||f.se<=1e8*(1+1e-7)||!(({wanted:e,ia:n,rows:r},l)=>{let o=r.map(e=>ng(l,t=>{var r;return e.Gn[null!=(r=n[t])?r:0]})),i=-1;if(r.forEach((e,t)=>{o[t]<=1e-9||(i<0||e.rn/o[t]<r[i].rn/o[
i])&&(i=t)}),i<0)return!1;let a=r[i],u=1/o[i];a.pattern=l,a.rn*=u;for(let t=0;t<e.length;t++)a.Gn[t]*=u;return r.forEach((n,r)=>{if(r!==i&&0!==o[r]){n.rn=t(0,n.rn-o[r]*a.rn);for(let t=0;t<e.length;
t++)n.Gn[t]-=o[r]*a.Gn[t]}}),!0})(a,f.pattern))break}return{yt:a.rows.map(({pattern:e,rn:t})=>({pattern:e,times:t})),u:u}}function sE(e,t,n,r){!function e({rest:t,cut:n,cr:r},l,i){sI(l,[...n,...sx(
t)]);let a=sv(n);if(l.Z===l.u||a+1>=l.Z)return;let u=sL(t,l.Z-a,i);if(i.s>i.limit||a+u.u>=l.Z)return;let s=u.yt.map(({pattern:e,times:t})=>({pattern:e,times:o(t+1e-6)})).filter(e=>e.times>0);if(
s.length>0)return void e({rest:sj(t,s),cut:[...n,...s],cr:r},l,i);let f=u.yt.slice().sort((e,t)=>t.times-e.times);for(let o=0;o<=r&&o<f.length;o++){let a={pattern:f[o].pattern,times:1};if(e({rest:sj(
t,[a]),cut:[...n,a],cr:r-o},l,i),l.Z===l.u||i.s>i.limit)return}}({rest:e,cut:[],cr:t},n,r)}function sS(e,t,r){let l=ng(e.sizes,(t,n)=>t*e.A[n]);for(;t.Z>t.u&&t.Z<=sM;){let a=function e(t,r,l,i){
var a;let u=t.A.findIndex(e=>e>0);if(u<0)return[];let s=t.A.join();if(r<=(null!=(a=i.get(s))?a:-1))return v;let f=((e,t,r,l)=>{var i;let{sizes:a,A:u,Q:s}=e,f=a.map(()=>0);f[t]=1;let h=a.map(()=>0);
for(let e=a.length-1;e>=0;e--)h[e]=(null!=(i=h[e+1])?i:0)+a[e]*u[e];let p=a.reduce((e,t,n)=>u[n]>0?t:e,0),c=[];if(function i(s,g){if(!sy(l,4))return!1;g<=r&&!((e,t,n,r)=>{let{sizes:l,A:o}=e,i=1/0;
for(let e=n;e<l.length;e++){if(t[e]-(e===n)>0&&i-l[e]<=r)return!0;if(o[e]!==t[e]){if(l[e]<=r)return!0;i=l[e]}}return!1})(e,f,t,g)&&c.push({pattern:sb(f),waste:g});for(let e=s;e<a.length&&g>=p&&g-h[
e]<=r;e++){let r=+(e===t);for(let t=n(u[e]-r,o(g/a[e]));t>0;t--)if(f[e]=r+t,!i(e+1,g-t*a[e]))return!1;f[e]=r}return!0}(t,s-a[t]))return c.sort((e,t)=>e.waste-t.waste)})(t,u,r,l);if(!f)return j;for(
let{pattern:n,waste:o}of f){let a={pattern:n,times:1},u=e(sj(t,[a]),r-o,l,i);if(v!==u)return j===u?u:[a,...u]}return i.set(s,r),v}(e,(t.Z-1)*e.Q-l,r,new i);if(j===a)return;if(v===a){t.u=t.Z;
return}sI(t,a)}}var sM=1e3;function sj(e,t){let n=e.A.slice();for(let e of t)s$(n,e);return{...e,A:n}}function sI(e,t){let n=sv(t);n>=e.Z||(e.best=t,e.Z=n)}var sA=[[.5,(e,n,r)=>{n.u=t(n.u,sL(e,n.Z,
r).u)}],[.6,(e,t,n)=>sE(e,0,t,n)],[.3,sS],[.6,(e,t,n)=>sE(e,2,t,n)],[1,sS]];function s_(e,t,n,r,l,o){return rg(rc({length:{given:e,read:n1(s)},width:{given:t,read:n1(s)},roll_width:{given:n,read:n1(
s)},roll_length:{given:r,read:n1(s)},overlap:{given:l,read:n2(u),B:()=>0}},o,sC))}function sP(e,r,i,a){var u,f;let h,{values:p,units:c}=rd({stock_length:{given:r,read:n1(s)},kerf:{given:i,read:n5(X),
B:e=>tE(nP(X,e))}},a),g=rm(tp,e,n1(s),c).filter(e=>null!==e),d=ng(g,e=>l(e/p.stock_length));if(d>5e3)throw Error(n$.To(tp,d,5e3));return u=p.stock_length,f=p.kerf,h={length:u,te:0,Cn:tE(195072),fr:
0},((e,n,r,o={})=>{var i;for(let t of(r2("stock length",n,1),r2(X,r,0),e))r2("piece length",t,1);if(e.some(e=>e>n))throw C("A piece is longer than the stick.");let a=e.map((e,t)=>t).sort((t,n)=>e[n]-
e[t]||t-n),u=((e,t)=>{let n=[],r=[];for(let t of e)t!==nh(n)&&(n.push(t),r.push(0)),r[r.length-1]++;return{sizes:n,Q:t,A:r}})(a.map(t=>e[t]+r),n+r),s=((e,n)=>{let r,o,i=sx(e),a={best:i,Z:sv(i),u:(o=
l((r=e.sizes.filter(t=>2*t<=e.Q)).length/1e3),[0,...r.filter((e,t)=>t%o==0)].reduce((n,r)=>t(n,(({sizes:e,A:n,Q:r},o)=>{let i=0,a=0,u=0,s=0;return e.forEach((e,t)=>{e>r-o?i+=n[t]:2*e>r?(a+=n[t],u+=n[
t]*(r-e)):e>=o&&(s+=n[t]*e)}),i+a+t(0,l((s-u)/r))})(e,r)),0))},u=0;for(let[t,r]of sA){if(a.Z===a.u||e.sizes.length>500)break;let l={s:u,limit:u+t*(n-u)};r(e,a,l),u=l.s}return{...a,s:u}})(u,5e6*(
null!=(i=o.Ae)?i:1));return{sticks:((e,t,n)=>{let r=[];t.A.reduce((e,t,n)=>(r[n]=e,e+t),0);let l=[];for(let{pattern:t,times:o}of e)for(let e=0;e<o;e++)l.push(t.map(e=>n[r[e]++]));return l})(s.best,u,
a),count:s.Z,u:s.u,re:s.Z===s.u?M:j,s:s.s}})(g.flatMap(e=>((e,t)=>{let r=[],i=e;for(;i>t.length+(t.fr>0?t.fr+r.length:0);)r.push(t.length),i-=t.length-t.te;if(r.length>0&&i<n(t.Cn,t.length/2)){let e=
t.length+i;r[r.length-1]=l(e/2),i=o(e/2)}return[...r,n(i,t.length)]})(e,h)),u,f).count}function sT(e,t,n,r,l){return rg(rc({width:{given:e,read:n1(u)},species_or_coefficient:{given:t,read:sR},
moisture_from:{given:n,read:sz},moisture_to:{given:r,read:sz}},l,(e,t)=>{var n,r,l;return n=a0(e.width,t),r=e.species_or_coefficient,l=e.moisture_from,n*r*(e.moisture_to-l)}))}function sO(e,t,n){
return rg(rc({temperature:{given:e,read:sN},humidity:{given:t,read:rn}},n,e=>{var t,n;let r,l,o,i;return t=e.temperature,n=e.humidity.n/e.humidity.d,o=(r=6.34+775e-6*t-935e-7*t*t)*(l=(.791+463e-6*t-
844e-9*t*t)*n),i=r*(1.09+.0284*t-904e-7*t*t)*l*l,1800/(330+.452*t+.00415*t*t)*(l/(1-l)+(o+2*i)/(1+o+i))}))}function sC({length:e,width:r,roll_width:i,roll_length:a,overlap:u},s){if(2*u>n(i,
a))return nJ("overlap",e=>n$.xo(e,aY(u,s)));let f=l(t(e,r)/(i-u))*l(t(e,r)/(a-u));return f>5e3?{argument:"roll_width",says:e=>n$.Ro(e,f,5e3)}:((e,r,i)=>{if(!(i.overlap<n(i.width,i.length)))throw C(
"The overlap is as wide as the roll.");return n(...[[e,r],[r,e]].map(([e,r])=>{let a=t(1,l((r-i.overlap)/(i.width-i.overlap))),u=((e,t)=>{let r=[],l=e;for(;l>t.length+0;)r.push(t.length),l-=t.length-
t.overlap;return[...r,n(l,t.length)]})(e,i),s=nh(u);return a*(u.length-1)+l(a/o(i.length/s))}))})(e,r,{width:i,length:a,overlap:u})}function sR(e){return d==typeof e||w==typeof e?(e=>{var t,n;let r,
l,o,i,a,u,s=sk(e);if(null!==s)return s>0&&s<=.02?s:{says:t=>n$.wo(t,e)};let f=(l=(r=null!=(t=c(e).toLowerCase().match(/[a-z]+/g))?t:[]).some(e=>sm.includes(e)),o=r.filter(e=>!sm.includes(e)&&!
sw.includes(e)),a=(i="red alder 151 256,white ash 169 274,black ash 172 274,quaking aspen 119 234,American basswood 230 330,American beech 190 431,paper birch 2\
19 304,yellow birch 256 338,sweet birch 256 338,black cherry 126 248,eastern cottonwood 133 327,American elm 144 338,pecan hickory 169 315,black locust 158 252,\
bigleaf maple 126 248,red maple 137 289,silver maple 102 252,black maple 165 353,sugar maple 165 353,hard maple 165 353,red oak 158 369,white oak 180 365,overcu\
p white oak 183 462,sweetgum 183 365,black walnut 190 274,true hickory 0 411,Douglas fir 0 267,southern yellow pine 0 265".split(_).map(e=>{let[,t,n,r]=/^(.+) (\d+) (\d+)$/.exec(e);return{species:t,
radial:g(n)/1e5||null,tangential:g(r)/1e5}}).filter(({species:e})=>{let t=e.toLowerCase().split(A);return o.length>0&&o.every(e=>t.includes(e))})).filter(({species:e})=>e.split(A).length===o.length),
1!==(u=1===i.length?i:a).length?i.map(({species:e})=>e):null!=(n=l?u[0].radial:u[0].tangential)?n:[]);return w==typeof f?f:{says:t=>n$.species(t,e,f)}})(e):{says:t=>n$.species(t,nQ(e),[
])}}function sN(e,t){var n=ru(e);let r=sk(n);if(null===r)return{says:e=>n$.degrees(e,n)};let l=p===t?r:1.8*r+32;return l>=30&&l<=270?l:{says:e=>n$.temperature(e,n,t)}}function sz(e){let t=rn(e);if(
nZ(t))return t;let n=100*t.n/t.d;return n>=6&&n<=14?n:{says:t=>n$.ko(t,nQ(e),6,14)}}function sF(e,r){var l,o;let i=t(null!=(l=e.run)?l:0,null!=(o=r.run)?o:0);if(i>0)return i;let a=tE(64e6),u=
e.plankLength/function e(t,n){return 0===n?t:e(n,t%n)}(e.plankLength,r.plankLength),s=u>a/r.plankLength?a:u*r.plankLength;return n(a,t(e.dr,r.dr)+s+1)}function sW({dr:e,plankLength:t,run:n},r){let l=
[];for(let o=e;o<(null!=n?n:r);o+=t)l.push(o);return l}function sD(e,t){let{first_pieces:n,plank_length:r,run:l}=e;return n>r?nJ(ej,e=>n$.jo(e,aY(n,t),aY(r,t))):null!==l&&n>l?nJ(ej,e=>n$.Vo(e,aY(n,
t),aY(l,t))):{dr:n,plankLength:r,run:l,minStagger:e.min_stagger,units:t}}function sq(e,t,n,r){return rg(rc(sG(e,t,n),r,(e,t)=>{let n=sH(e.depth,e.gap,t);if(nZ(n))return n;if(n<e.plank_width){var r;
return r=e.plank_width,nJ(tr,e=>n$.Ho(e,aY(r,t),aY(n,t)))}let l=sV(ef)(t);return a0(at(n,e.plank_width,{minRip:0,Qr:l}).last,t)}))}function sK(t,n,r,l,o){let i=rc({...sG(t,n,r),min_rip:{given:l,read:
n2(u),B:sV(eT)}},o,(e,t)=>{let n=sH(e.depth,e.gap,t);return nZ(n)?n:((e,t,n,r)=>{let l=sV(ef)(r),o=at(e,t,{minRip:n,Qr:l}),i=1===o.rowCount?tc:"first and last row ripped alike",[a,u]=[aY(o.Qt,r),aY(
n,r)],s=a===u?`just under ${u}`:a,f={"all rows full":0===o.Zt?eG:`all rows full, less than ${aY(l,r)} left for the gap at the wall`,"last row ripped":"first row full, last row ripped",
"first and last row alike":`${i}: after a full first row the last would be ${s}`,"one row":tc,"under the minimum rip":`${i}, under the minimum rip of ${u}`};return[o.rowCount,a0(o.first,r),a0(o.last,
r),f[o.note]]})(n,e.plank_width,e.min_rip,t)});if(i[0].length>1)throw Error(n$.xt("depth",ry(i)));return i.map(([t])=>e===t?[e,e,e,e]:[...t])}function sB(t,n,o,i,a){let f=rk(t);if(f.length>1&&f[
0].length>1)throw Error(n$.xt(ej,ry(f)));return rg((t=>{let n=t.flat(),o=ng(n,(t,r)=>r>0?((t,n)=>{var r,o;let i;return e===t||e===n?0:(i=sF(t,n),l((null!=(r=t.run)?r:i)/t.plankLength)+l((null!=(o=
n.run)?o:i)/n.plankLength))})(t,n[r-1]):0);if(o>1e6)throw Error(n$.Po(ej,o,1e6));let i=n.findIndex(t=>e!==t),a=n.map((t,l)=>{let o;if(e===t)return e;let a=l<=i?void 0:n[l-1];return e===a?n$.So(l):
void 0===a?"OK":null===(o=((e,t)=>{let n=sF(e,t),l=sW(e,n),o=sW(t,n),i=null,a=0;for(let e=0;e<l.length&&o.length>0;e++){for(;a+1<o.length&&r(o[a+1]-l[e])<r(o[a]-l[e]);)a+=1;let t=r(o[a]-l[e]);(
null===i||t<i.Ce)&&(i={yo:e+1,la:a+1,Ce:t})}return i})(t,a))||o.Ce>=t.minStagger?"OK":((e,t,n,r)=>{let l=`joint ${e.la} of row ${t}`;if(0===e.Ce)return`Joint ${e.yo} lines up with ${l}: ${aY(n,
r)} is wanted`;let o=aY(n-e.Ce,r),i=o===aY(0,r)?`less than ${p===r?'1/16"':"1 mm"}`:o;return`Joint ${e.yo} is ${aY(e.Ce,r)} from ${l}: ${i} too near`})(o,l,t.minStagger,t.units)}),u=t[0].length;
return t.map((e,t)=>a.slice(t*u,(t+1)*u))})(rc({first_pieces:{given:t,read:n1(u)},plank_length:{given:n,read:n3},min_stagger:{given:o,read:n2(u),B:sV(e0)},run:{given:i,read:n1(s),B:()=>null}},a,
sD)))}function sG(e,t,n){return{depth:{given:e,read:n1(s)},plank_width:{given:t,read:n4},gap:{given:n,read:n5(Z),B:sV(Z)}}}function sV(e){return t=>tE(nP(e,t))}function sH(e,t,n){return e>2*t?e-2*t:
nJ("gap",r=>n$.Pr(r,aY(t,n),no(tS(e),n,s)))}function sU({H:e,distances:n},r){let l=t(1,e.findIndex((t,n)=>n===e.length-1||t>r)),[o,i]=[e[l-1],e[l]];return n[l-1]+(n[l]-n[l-1])*(r-o)/(i-o)}var sJ=
"glue each narrow piece to its plank before you set the two.";function sZ(o,i,a,p,c,g,d,m){let{values:w,units:y}=rd({every:{given:i,read:n1(s)},plank_width:{given:p,read:n4},gap:{given:c,read:n5(Z),
B:sX(Z)},min_rip:{given:g,read:n2(u),B:sX(eT)},tolerance:{given:d,read:n2(u),B:sQ}},m),x=rw("pieces",o,n1(u),y).map(tM),$=rw("distances",a,n1(u),y).map(tM),v={H:$.map((e,t)=>t*tM(w.every)),distances:
$},b=v.H[$.length-1],L=e=>no(e,y,k);if($.length<2)throw Error("distances has one distance. Measure at both ends of the row at least.");let S=nd(x);if(S>b){let e,t;throw Error((e=L(S),t=L(b),
`The pieces are ${e} together, and the distances reach ${t}. Measure as far as the row goes, or beyond.`))}let M={plankWidth:tM(w.plank_width),gap:tM(w.gap),tolerance:tM(w.tolerance),step:nP(ef,y)},
j=((e,o,i)=>{let a=[0];for(let t of e)a.push(nh(a)+t);let u=nh(a),s=o.H.filter(e=>e<u),f=t(0,l(t(...[...s,...a].map(e=>sU(o,e)-i.gap))/i.plankWidth)-1),h=i.gap+f*i.plankWidth,p=e=>tP(sU(o,e)-h,
i.step),c=e.map((e,n)=>{let[l,u]=[a[n],a[n+1]],f=s.filter(e=>e>l&&e<u),h=(function e(n,l){let[o,i]=[n[0],nh(n)],a=n.map(e=>r((({x:e,y:t},n,r)=>t-n.y-(r.y-n.y)*(e-n.x)/(r.x-n.x))(e,o,i))),u=t(...a);
if(!(u>l))return[o,i];let s=a.indexOf(u);return[...e(n.slice(0,s+1),l),...e(n.slice(s),l).slice(1)]})([l,...f,u].map(e=>({x:e,y:sU(o,e)})),i.tolerance).slice(1,-1).map(({x:e})=>({at:e-l,width:p(
e)}));return{left:p(l),right:p(u),ua:h}}),g=[...s,...a].map(p);return{ca:f,fa:c,Ie:n(...g),or:t(...g)}})(x,v,M);return[...(({ca:n,Ie:r,or:l},{plankWidth:o,gap:i},{minRip:a,trimCover:u},s)=>{let f,h,
p,c=`the last one, ${r===l?s(l):`${s(t(0,r))} to ${s(l)}`} wide.`,g=nx(n,"whole row","whole rows"),d=0===n?`Next is ${c}`:`${g}, then ${c}`;if(r>=a)return[d];let m=a-r,w=`Under the minimum rip of ${
s(a)}.`,k=l+i<=u?` ${f=s(l+i),`Or leave it off, where trim hides a gap of ${f}.`}`:e;return 0===n?[d,`${w} Take that row up, and ${sJ}${k}`]:l+m>o||o-m<a?[d,`${
w} The wall is too far out of line for one row: share the taper over the rows that are left, or fur the wall out.`]:[d,`${w} ${(h=s(o-m),p=s(a),`Rip one of the rows still to be laid to ${
h}: then the last one is ${p} or more. Its sawn edge has no lock: join it with a glued slip tongue. Or ${sJ}`)}${k}`]})(j,M,{minRip:tM(w.min_rip),trimCover:nP(e1,y)},L).map(t=>[t,e,e,e]),[k,f,h,
"cut"],...j.fa.map((e,t)=>[t+1,a1(e.left,y),a1(e.right,y),(({left:e,right:t,ua:r},l)=>0>=n(e,t,...r.map(({width:e})=>e))?"runs out: no piece at the narrow end":0===r.length?e===t?B:"rip, tapered":
`scribe: ${r.map(({at:e,width:t})=>`${l(t)} at ${l(e)}`).join(E)} from its left end`)(e,L)])]}function sX(e){return t=>tE(nP(e,t))}function sQ(e){return tE(p===e?tj(1/8):tI(3))}function sY(e,t=
0x811c9dc5){let n=t;for(let t=0;t<e.length;t++)n=W(n^e.charCodeAt(t),0x1000193);return n>>>0}function s0(e){return`line
${e.join("\n")}`}function s1(e,t,n){return`input
${t}
${n}
${e.join("\n")}`}function s2(e){let t=W(e^e>>>16,0x85ebca6b);return((t=W(t^t>>>13,0xc2b2ae35))^t>>>16)>>>0}var s3=/^This (list|floor plan|order) no longer holds: /,s4=/[_-](US|LR|MM)$/,s6=
"General";function s5(t,n,r){let l=uk(t,n,r);if(!l)return{cells:[],formulas:[],notes:[],memory:e};let o=l.getDataRange(),i=l.getRange(1,1,l.getMaxRows(),l.getMaxColumns()).getNotes();return{cells:
o.getValues(),formulas:s8(o.getFormulas()),notes:s8(i),memory:u$(l).memory}}function s8(e){let t=[];return e.forEach((e,n)=>{e.forEach((e,r)=>{e&&t.push([n,r,e])})}),t}function s9(e,t){let{cells:n}=
t,r=n[0].length;if(n.some(e=>e.length!==r))throw Error("Internal: the rows of a tab differ in length.");let l=e=>n.map(t=>t.map(t=>e(t.look))),o=e.getRange(1,1,n.length,r);o.setValues(n.map(e=>e.map(
fe))),o.setNumberFormats(n.map(e=>e.map(ft))),o.setBackgrounds(l(e=>e.background)),o.setFontColors(l(e=>e.color)),o.setFontWeights(l(e=>e.bold?"bold":"normal")),o.setFontSizes(l(e=>e.size)),
o.setHorizontalAlignments(l(e=>e.align)),o.setVerticalAlignment(S),o.setWraps(l(e=>e.wrap)),fn(e,t),s7(e,t,{rows:n.length,columns:r})}function s7(t,{notes:n},{rows:r,columns:l}){if(!n)return;let o=
nw(r,()=>eM(l).fill(e));for(let[e,t,i]of n)e<r&&t<l&&(o[e][t]=i);t.getRange(1,1,r,l).setNotes(o)}function fe({value:t}){switch(t.kind){case q:return e;case er:return e===t.text?e:`'${t.text}`;case w:
if(!D(t.number))throw Error("Internal: a number of a tab is not finite.");return t.number;case tg:return t.formula.replace(/"[^"]*"|'[^']*'|,/g,e=>_===e?";":e);case eJ:return t.ticked}}function ft({
value:e}){return er===e.kind?"@":w===e.kind||tg===e.kind?e.format:s6}function fn(e,{cells:t}){let n=({value:e})=>eJ===e.kind||er===e.kind&&void 0!==e.choices;if(!t.some(e=>e.some(n)))return;let r=
SpreadsheetApp.newDataValidation().requireCheckbox().build(),l=new i,o=t.map(e=>e.map(({value:e})=>{var t,n;let o,i;return eJ===e.kind?r:er===e.kind&&e.choices?(o=(t=e.choices).join("\n"),i=null!=(n=
l.get(o))?n:SpreadsheetApp.newDataValidation().requireValueInList([...t]).setAllowInvalid(!0).build(),l.set(o,i),i):null}));e.getRange(1,1,t.length,t[0].length).setDataValidations(o)}function fr(e,
t){let n=t.columnWidths;for(let t=0,r=0;t<n.length;t=r){for(;r<n.length&&n[r]===n[t];)r++;e.setColumnWidths(t+1,r-t,n[t])}if(t.heights)for(let{firstRowNumber:n,rowCount:r,pixels:l}of(
e.setRowHeightsForced(1,e.getMaxRows(),21),t.heights))e.setRowHeightsForced(n,r,l);uh(()=>e.setFrozenRows(t.frozenRows)),uh(()=>{var n;return e.setFrozenColumns(null!=(n=t.frozenColumns)?n:0)}),uh((
)=>e.setHiddenGridlines(!t.showGridlines))}function fl(){SpreadsheetApp.getUi().createAddonMenu().addItem("Plan a floor","openLedger").addItem("Check this spreadsheet","checkSpreadsheet").addToUi(
)}function fo(){fl()}function fi(){SpreadsheetApp.getUi().showSidebar(HtmlService.createHtmlOutputFromFile(td).setTitle("Plank Ledger"))}function fa(){SpreadsheetApp.getUi().showSidebar(
HtmlService.createHtmlOutputFromFile("Check").setTitle(ti))}function fu(){var e;return e=SpreadsheetApp.getActiveSpreadsheet().getSpreadsheetLocale(),s4.test(e)?p:U}function fs(){
return SpreadsheetApp.getActiveSpreadsheet().getSpreadsheetLocale()}function ff(e,t){let n=SpreadsheetApp.getActiveSpreadsheet(),r=s5(n,c(e),c(t)),l=fd(n,r);return{...r,cells:l,version:fm(l,
r)}}function fh(){return uv(SpreadsheetApp.getActiveSpreadsheet()).map(({mark:e,sheet:t})=>({mark:e,tab:t.getName(),about:u$(t).about}))}function fp(e,t){up(()=>{for(let n of uv(
SpreadsheetApp.getActiveSpreadsheet()))n.mark===c(e)&&((e,t,n)=>{n.test(c(e.getRange(1,1,1,1).getValues()[0][0]))||e.insertRowsBefore(1,1);let r=e.getRange(1,1,1,1);r.setValues([[t]]),
r.setFontWeights([["bold"]]),r.setFontSizes([[11]]),r.setFontColors([["#a3180e"]]),r.setWraps([[!1]]),uh(()=>e.setFrozenColumns(0)),SpreadsheetApp.flush()})(n.sheet,c(t),s3)})}function fc(e,t,n){up((
)=>{((e,t,n,r)=>{let[l]=r.split(" - ");for(let{sheet:o}of uv(e).filter(e=>e.mark===t)){let t=e.getSheets().filter(e=>e.getSheetId()!==o.getSheetId()),[i,a]=[o.getName(),uS(t,r)];i!==a&&uE(
i).startsWith(`${l} - `)&&o.setName(a),ub(o,uc,n)}})(SpreadsheetApp.getActiveSpreadsheet(),c(e),c(t),c(n))})}function fg(r,i){let a=eu.now();if(!(t=>{if(F!=typeof t||null===t)return!1;let{title:n,
mark:r,looks:l,cells:o}=t;return d==typeof n&&d==typeof r&&e!==r&&K(l)&&K(o)&&o.length>0&&o.every(K)})(r))throw Error("The sidebar sent something that is not a \
tab. Reload the spreadsheet and open the sidebar again.");let u=(({looks:e,...t})=>{let n=t=>{if(w==typeof t)return{value:{kind:q},look:e[t]};let[n,r,l]=t;return void 0===l?{value:r,look:e[n]}:{
value:r,look:e[n],owner:l}};return{...t,cells:t.cells.map(e=>e.map(n))}})(r);return up(()=>{var r,s;let f=SpreadsheetApp.getActiveSpreadsheet(),{mark:h,title:p}=u,g=()=>{let t;return e===i||(t=s5(f,
h,p),fm(fd(f,t),t)===i)},d=g()?((r,i,a=()=>!0)=>{if(uL(r),"above"===i.place){var u;let e=uk(r,i.mark,i.title);if(!e)throw Error(`Internal: there is no tab ${i.title} to write above.`);let t=
i.cells.length;e.insertRowsBefore(1,t);let n=i.cells.map(e=>e.map(()=>s6));return e.getRange(1,1,t,i.cells[0].length).setNumberFormats(n),s9(e,i),SpreadsheetApp.flush(),e.getName()}let s=
r.getActiveSheet(),f=uk(r,i.mark,i.title);try{let h,p,g=uy(r,i.title);uh(()=>r.setActiveSheet(s));let d=(({cells:e},n)=>{let r=n?n.getMaxRows():0,l=n?n.getMaxColumns():0;return{rows:t(r,e.length),
columns:t(l,e[0].length)}})(i,f);h=g.getMaxRows(),p=g.getMaxColumns(),h<d.rows&&g.insertRowsAfter(h,d.rows-h),p<d.columns&&g.insertColumnsAfter(p,d.columns-p),f||fr(g,i),s9(g,i),SpreadsheetApp.flush(
);let m=((e,{cells:t})=>{let n=e.getRange(1,1,t.length,t[0].length),r=n.getValues();return t.some((e,t)=>e.some((e,n)=>(({value:e},t)=>er===e.kind&&t===`'${e.text}`)(e,r[t][n])))?(n.setValues(t.map(
e=>e.map(e=>{var t;return null!=(t=er!==e.value.kind||/^[=+]/.test(e.value.text)?null:e.value.text)?t:fe(e)}))),SpreadsheetApp.flush(),n.getValues()):r})(g,i),w={memory:((r,{cells:i},a)=>{let u=
r.getRange(1,1,i.length,i[0].length).getFormulas();var s=i.flatMap((t,n)=>{let r=t.map((t,r)=>{var l,o;let i;return{cell:t,token:(l=a[n][r],e!==(o=u[n][r])?(i=o.replace(/\$?[A-Z]{1,3}\$?\d+/g,
"@").replace(/\s/g,e)).startsWith("=")?i:`=${i}`:null==l||!1===l?e:!0===l?"TRUE":c(l).trim())}}).filter(({cell:t,token:n})=>e!==n&&"person"!==t.owner),l=r.filter(({cell:e})=>void 0===e.owner).map(({
token:e})=>e),o=r.flatMap(({cell:{owner:t},token:n})=>F==typeof t?[s1(l,t.input,n),s1(l,e,n)]:[]);return 0===r.length?[]:[s0(r.map(({token:e})=>e)),s0(l),...o]});let f=nk(s),h=n(28e3,t(8,l(48*
f.length/6))),p=eM(h).fill(0);for(let e of f)for(let r of((e,r,l)=>{let o=6*l,i=t(1,n(30,x(Math.LN2*o/t(1,r)))),a=s2(sY(e)),u=1|s2(sY(e,0x2f0b4a27));return nw(i,e=>s2(a+W(e,u))%o)})(e,f.length,h))p[
o(r/6)]|=1<<r%6;return`${f.length}:${p.map(e=>"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"[e]).join(e)}`})(g,i,m),about:null!=(u=i.about)?u:e};return f?a()?(((e,t,n,r)=>{var l;
let o=t.getMaxRows(),i=t.getMaxColumns();null==(l=t.getFilter())||l.remove(),uh(()=>t.setFrozenRows(0)),uh(()=>t.setFrozenColumns(0)),t.showRows(1,o),t.showColumns(1,i),t.getRange(1,1,o,
i).breakApart(),o<r.rows&&t.insertRowsAfter(o,r.rows-o),i<r.columns&&t.insertColumnsAfter(i,r.columns-i);let a=t.getRange(1,1,r.rows,r.columns);e.getRange(1,1,r.rows,r.columns).copyTo(a),
a.clearDataValidations(),fn(t,n),s7(t,n,r),uh(()=>fr(t,n)),SpreadsheetApp.flush()})(g,f,i,d),ux(f,w),uL(r),uh(()=>{var t;let n;return t=i.title,void((n=f.getName().replace(/ \(\d+\)$/,e)).includes(
":")&&uE(n)===uE(t)&&f.setName(uS(r.getSheets(),t)))}),f.getName()):(uL(r),null):(ux(g,w),SpreadsheetApp.flush(),((e,t,n,r)=>{for(let l of(t.setName(uS(e.getSheets(),r)),uj(e,ug)))l.setValue(n)})(r,
g,i.mark,i.title),SpreadsheetApp.flush(),g.getName())}catch(e){throw uh(()=>uL(r)),e}})(f,u,g):null;if(null===d)return{status:"changed"};let m=null!=(s=null==(r=uk(f,h,p))?void 0:r.getSheetId())?s:0;
return{status:"written",tab:d,spreadsheetId:f.getId(),sheetId:m,ms:eu.now()-a}})}function fd(e,{cells:t}){return t.map((t,n)=>t.map((t,r)=>{if(F!=typeof t||null===t)return t;if(!tb(t)){let e,t;
throw Error((e=n+1,t=r+1,`There is a picture in row ${e}, column ${t} of the tab, which cannot be kept. Put it over the cells or move it to another tab, then fi\
ll again.`))}let[l,o,i]=Utilities.formatDate(t,e.getSpreadsheetTimeZone(),"yyyy-M-d").split(L).map(g);return[l,o,i]}))}function fm(e,{formulas:t,notes:n}){let r=e.map(e=>[...e]);for(let[e,n,l]of t)r[
e][n]=l;let l=em([r,n]);return`${l.length}-${sY(l)}`}function fw(e){let t=SpreadsheetApp.getActiveSpreadsheet(),n=t.getSheetByName(c(e));if(!n){var r;throw Error((r=c(e),`There is no tab "${r.length>
40?`${r.slice(0,37)}...`:r}" any more. Fill it again.`))}t.setActiveSheet(n)}var fk='id="large-view" hidden>';function fy(e,r,l){let o=HtmlService.createHtmlOutputFromFile(td).getContent(),i=em(
e).replace(/</g,"\\u003c").replace(/&/g,"\\u0026"),a=HtmlService.createHtmlOutput(o.replace(fk,()=>fk+i)),u=e=>n(2400,t(300,x(g(e))||0));SpreadsheetApp.getUi().showModalDialog(a.setWidth(u(
r)).setHeight(u(l)),"The floor")}return((e,t,n)=>{if(t&&F==typeof t||"function"==typeof t)for(let r of tk(t))ty.call(e,r)||void 0===r||tm(e,r,{get:()=>t[r],enumerable:!(n=tw(t,r))||n.enumerable});
return e})(tm({},"__esModule",{value:!0}),tx)})();
/**
 * Area of a rectangular room, with an allowance for waste: length x width x (1 + waste).
 * Answers square feet, or square metres with units "metric".
 * Example: PLANK_AREA(12, 10, 10%) is 132. PLANK_AREA("12' 6""", 10) is 125.
 * Any argument may be a range: ranges of the same size go row by row, a blank row answers blank.
 *
 * @param {number|string|range} length Length of the room: feet (metres with "metric"), or text such as 12' 6 1/2" or 3.81 m.
 * @param {number|string|range} width Width of the room: feet (metres), or text with its own units.
 * @param {number|string|range} [waste] Waste on top: 10%, 0.1 or 10 all mean ten per cent. Blank means none.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Area in square feet or square metres.
 * @customfunction
 */
function PLANK_AREA(length, width, waste, units) {
  return __plankLedger.PLANK_AREA.apply(null, arguments);
}

/**
 * Whole boxes for an area, with an allowance for waste. Counted exactly: 7.2 with 2.4 a box is 3 boxes.
 * Example: PLANK_BOXES(120, 24, 10%) is 6: 132 square feet fill five and a half boxes.
 *
 * @param {number|string|range} area Area to cover: square feet (square metres with "metric"), or text such as 12.3 m2.
 * @param {number|string|range} box_coverage Area that one box covers, in the same units, or text such as 23.6 sq ft.
 * @param {number|string|range} [waste] Waste on top: 10%, 0.1 or 10 all mean ten per cent. Blank means none.
 * @param {string} [units] "us" for square feet, "metric" for square metres. Blank means "us".
 * @return {number} Boxes to buy, a whole number.
 * @customfunction
 */
function PLANK_BOXES(area, box_coverage, waste, units) {
  return __plankLedger.PLANK_BOXES.apply(null, arguments);
}

/**
 * Plans the same rectangular rooms with several products and answers a table, one line per product: planks, boxes, waste
 * (a fraction), shortest piece (inches, or millimetres with units "metric"), price, note. Rooms share their planks.
 * Example: PLANK_COMPARE(B9:B11, C9:C11, A20:E23) for three rooms and four products.
 *
 * @param {number|string|range} length Length of the room, or of each room: feet (metres with "metric"), or text such as 12' 6 1/2".
 * @param {number|string|range} width Width of the room, or of each room: feet (metres), or text with its own units.
 * @param {range} products One row per product, three to five columns: name, plank length and plank width in inches (millimetres) or as text, planks in a box, price of a box. At most 20. Blank rows are left blank.
 * @param {range} [rules] Two columns, name and value, as for PLANK_CUTS.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} The table, with a heading.
 * @customfunction
 */
function PLANK_COMPARE(length, width, products, rules, units) {
  return __plankLedger.PLANK_COMPARE.apply(null, arguments);
}

/**
 * Planks that rows take when every offcut is used again where it can be: what PLANK_OFFCUTS plans, plus the spare
 * planks of the rules.
 * Example: PLANK_COUNT(A2:A20, 47.25) with the length of every row in feet in A2:A20.
 *
 * @param {range} runs Length to be covered in each row: feet (metres with "metric"), or text such as 12' 6 1/2". One column or one row of cells, none blank between them, at most 500.
 * @param {number|string|range} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m. A range compares plank lengths, one answer each.
 * @param {range} [rules] Two columns, name and value, as for PLANK_OFFCUTS; spare adds whole planks.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @param {string} [proof] "yes" puts beside each number whether fewer planks are possible. Blank means "no": the number alone, in one cell.
 * @return {number} Planks, a whole number.
 * @customfunction
 */
function PLANK_COUNT(runs, plank_length, rules, units, proof) {
  return __plankLedger.PLANK_COUNT.apply(null, arguments);
}

/**
 * The whole cut list of a rectangular room: one line per piece, in the order of laying: row, piece, length, width, plank
 * it is cut from, end it keeps, where the rest of the plank goes, notes. Lengths are inches, or millimetres with units
 * "metric".
 * Rows lie along the length unless the rules say otherwise; the first row is a full plank wide unless the last would
 * come out under the minimum rip.
 * Example: PLANK_CUTS(12, 10, 47.25, 7.5)
 *
 * @param {number|string} length Length of the room, wall to wall: feet (metres with "metric"), or text such as 12' 6 1/2".
 * @param {number|string} width Width of the room, wall to wall: feet (metres), or text with its own units.
 * @param {number|string} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m.
 * @param {number|string} plank_width Width of a plank's face: inches (millimetres), or text with its own units.
 * @param {range} [rules] Two columns, name and value, in any order: expansion gap, minimum stagger, minimum piece, minimum rip, kerf, play, aligned-joint distance, marking step, lay direction (length, width, wall 2, or degrees). A bare number is inches (millimetres). Defaults: gap 3/8 in (10 mm), stagger and piece 8 in (200 mm), rip 2 in (50 mm), kerf 1/8 in (3 mm), play 1/4 in (6 mm), aligned-joint distance 2 in (50 mm), marking step 1/16 in (1 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} The cut list, with a heading.
 * @customfunction
 */
function PLANK_CUTS(length, width, plank_length, plank_width, rules, units) {
  return __plankLedger.PLANK_CUTS.apply(null, arguments);
}

/**
 * Moisture content that wood settles at in air of a temperature and humidity, per cent of its dry weight (USDA Forest
 * Products Laboratory, FPL-RN-0268).
 * Example: PLANK_EMC(70, 50) is 9.2 when rounded: wood in a room at 70 degrees Fahrenheit and 50 per cent humidity.
 * Any argument may be a range: ranges of the same size go row by row, a blank row answers blank.
 *
 * @param {number|range} temperature Air temperature: 30 to 270 degrees Fahrenheit (-1 to 132 Celsius with "metric").
 * @param {number|string|range} humidity Relative humidity: 50, 50% or 0.5; 100 for saturated air, as 1 could be either.
 * @param {string} [units] "us" for Fahrenheit, "metric" for Celsius. Blank means "us".
 * @return {number} Moisture content in per cent: 9.2 means 9.2 per cent.
 * @customfunction
 */
function PLANK_EMC(temperature, humidity, units) {
  return __plankLedger.PLANK_EMC.apply(null, arguments);
}

/**
 * Does an offcut in hand fit at an end of a row? One line per offcut, as the first and as the last piece: what is over, or why not and
 * the nearest first piece with which it fits by the rules.
 * Example: PLANK_FIT(H2:J9, 12, 30, 48, C2:F3) with the offcuts in H2:J9 and the rows beside in C2:F3.
 *
 * @param {range} in_hand As for PLANK_ONWARD: what is written on an offcut, its length, the factory end it has.
 * @param {number|string} run Length to be covered: feet (metres with "metric"), or text.
 * @param {number|string} first_piece As planned: inches (millimetres), or text.
 * @param {number|string} plank_length Length of a plank: inches (millimetres), or text.
 * @param {range} [beside] Pieces of the row before; in a second row of cells those of the row after. Blank for none.
 * @param {range} [rules] Two columns, name and value, as for PLANK_OFFCUTS.
 * @param {string} [units] "us" or "metric". Blank means "us".
 * @return {range} Offcut, as first piece, as last piece.
 * @customfunction
 */
function PLANK_FIT(in_hand, run, first_piece, plank_length, beside, rules, units) {
  return __plankLedger.PLANK_FIT.apply(null, arguments);
}

/**
 * Rip widths of the last row at a wall that is not straight. Measure from the edge of the last row that lies to the wall, at the
 * left end of the row and then at equal steps. First what is still to be laid and whether the last row is wide enough, then a line
 * per piece: its number, its width at the left and at the right end, and whether it is ripped straight or scribed. Widths are inches,
 * or millimetres with units "metric"; the gap is taken off.
 * Example: PLANK_LAST_RIPS(A2:A4, 4, B2:B5, 7.5) with the pieces in A2:A4 and the distances at 0, 4, 8 and 12 feet in B2:B5.
 *
 * @param {range} pieces Lengths of the pieces of the last row, from the left: inches (millimetres with "metric"), or text such as 23 5/8". One column or one row of cells.
 * @param {number|string} every How far the measured places are apart: feet (metres), or text such as 4' or 1.2 m.
 * @param {range} distances Distances from the row that lies to the wall, the first at the left end of the row: inches (millimetres) or text. Two or more.
 * @param {number|string} plank_width Width of a plank's face: inches (millimetres), or text such as 7 1/2".
 * @param {number|string} [gap] Expansion gap at the wall: inches (millimetres). Blank means 3/8 in (10 mm).
 * @param {number|string} [min_rip] Narrowest row you will lay: inches (millimetres). Blank means 2 in (50 mm).
 * @param {number|string} [tolerance] How far the wall may be off a straight rip before it is scribed: inches (millimetres). Blank means 1/8 in (3 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} What is still to be laid, then piece, left width, right width and how to cut it.
 * @customfunction
 */
function PLANK_LAST_RIPS(pieces, every, distances, plank_width, gap, min_rip, tolerance, units) {
  return __plankLedger.PLANK_LAST_RIPS.apply(null, arguments);
}

/**
 * Width of the last row when the first row is a full plank: what is left of the depth, less the gap at both walls.
 * Answers inches, or millimetres with units "metric".
 * Example: PLANK_LAST_ROW(10, 7.5, 0.25) is 7: ten feet less half an inch is 15 rows of 7 1/2 and 7 inches.
 *
 * @param {number|string|range} depth Depth of the room across the rows, wall to wall: feet (metres with "metric"), or text such as 10' 4 1/2" or 3.81 m.
 * @param {number|string|range} plank_width Width of a plank's face: inches (millimetres), or text such as 7 1/2".
 * @param {number|string|range} [gap] Expansion gap at each of the two walls: inches (millimetres). Blank means 3/8 in (10 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Inches or millimetres.
 * @customfunction
 */
function PLANK_LAST_ROW(depth, plank_width, gap, units) {
  return __plankLedger.PLANK_LAST_ROW.apply(null, arguments);
}

/**
 * Reads a length as the trade writes it and answers a number to calculate with: inches, or millimetres with units
 * "metric".
 * Example: PLANK_LENGTH("12' 6 1/2""") is 150.5. PLANK_LENGTH("3.81 m") is 150.
 *
 * @param {string|number|range} text Length such as 12' 6 1/2", 6-1/2", 3.81 m or 381 cm; a bare number is inches (millimetres).
 * @param {string} [units] "us" answers inches, "metric" millimetres. Blank means "us".
 * @return {number} Inches or millimetres.
 * @customfunction
 */
function PLANK_LENGTH(text, units) {
  return __plankLedger.PLANK_LENGTH.apply(null, arguments);
}

/**
 * Writes a length as it is marked on a plank: inches to the nearest 1/16, or whole millimetres with units "metric".
 * Example: PLANK_LENGTH_TEXT(6.5) is 6 1/2". PLANK_LENGTH_TEXT(190.4, "metric") is 190 mm.
 *
 * @param {number|string|range} value Inches (millimetres with "metric"), or text with its own units.
 * @param {string} [units] "us" for inches, "metric" for millimetres. Blank means "us".
 * @return {string} The length as text.
 * @customfunction
 */
function PLANK_LENGTH_TEXT(value, units) {
  return __plankLedger.PLANK_LENGTH_TEXT.apply(null, arguments);
}

/**
 * How much a board's width changes between two moisture contents: width x coefficient x (to - from). Negative when it
 * shrinks. For wood across the grain, between 6 and 14 per cent (USDA Wood Handbook, equation 13-2).
 * Example: PLANK_MOVEMENT(5, "white oak", 6, 9) is 0.05475 inches.
 * Any argument may be a range: ranges of the same size go row by row, a blank row answers blank.
 *
 * @param {number|string|range} width Width of the board: inches (millimetres with "metric"), or text such as 5 1/4" or 130 mm.
 * @param {string|number|range} species_or_coefficient A species such as white oak, black cherry or sugar maple, flat-sawn unless "quarter-sawn" is added; or its coefficient such as 0.0037.
 * @param {number|string|range} moisture_from Moisture content before: 6, 6% or 0.06.
 * @param {number|string|range} moisture_to Moisture content after.
 * @param {string} [units] "us" for inches, "metric" for millimetres. Blank means "us".
 * @return {number} Change of width in inches or millimetres.
 * @customfunction
 */
function PLANK_MOVEMENT(width, species_or_coefficient, moisture_from, moisture_to, units) {
  return __plankLedger.PLANK_MOVEMENT.apply(null, arguments);
}

/**
 * Plans the end cuts of rows so that offcuts are used again with as few planks as can be, and answers a table, a line
 * a row: row, first piece, cut from, whole planks, last piece, cut from, left over. Lengths are inches, or millimetres
 * with units "metric".
 * First pieces keep the plank's right end and last pieces its left end, so that all ends lock. Cut lengths are whole
 * marking steps; what is less than a step is left at the wall. A line under the table says so when the count is not
 * proved to be the fewest.
 * Example: PLANK_OFFCUTS(A2:A20, 47.25, F2:G6) with the length of every row in feet in A2:A20.
 *
 * @param {range} runs Length to be covered in each row: feet (metres with "metric"), or text such as 12' 6 1/2". One column or one row of cells, none blank between them, at most 500.
 * @param {number|string} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m.
 * @param {range} [rules] Two columns, name and value, in any order: expansion gap, minimum stagger, minimum piece, kerf, play, aligned-joint distance, marking step. A bare number is inches (millimetres). A rule left out has its default: stagger and piece 8 in (200 mm), kerf 1/8 in (3 mm), play 1/4 in (6 mm), aligned-joint distance 2 in (50 mm), marking step 1/16 in (1 mm); spare has no bearing on the table, PLANK_COUNT adds it; an expansion gap is taken off both ends only where it is given.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} The table, with a heading.
 * @customfunction
 */
function PLANK_OFFCUTS(runs, plank_length, rules, units) {
  return __plankLedger.PLANK_OFFCUTS.apply(null, arguments);
}

/**
 * Plans the rest of a floor from what lies and what is in hand: what to do next, how many planks are needed, then a line per
 * piece: row, piece, length, end to keep, cut from. Lengths are inches, or millimetres with units "metric". Offcuts in hand
 * come first; joints keep away from the row that lies. It answers anew as soon as a cell changes.
 * Example: PLANK_ONWARD(A2:A12, 47.25, C2:F2, H2:J9, 20, 9) with the lengths of the rows to lay in A2:A12, the pieces of row 8 in C2:F2, the offcuts in H2:J9 and 20 whole planks left.
 *
 * @param {range} runs Length to be covered in each row still to be laid: feet (metres with "metric"), or text such as 12' 6 1/2". One column or one row of cells, none blank between them, at most 200.
 * @param {number|string} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m.
 * @param {range} [laid] Pieces of the last row that lies, from the left: inches (millimetres) or text, one row of cells. A second row of cells is the row before it. Blank when nothing lies.
 * @param {range} [in_hand] Three columns: what is written on an offcut, its length in inches (millimetres) or as text, the factory end it has: left, right, both or none. Blank rows are left out.
 * @param {number} [whole_planks] Whole planks left. Blank means 0.
 * @param {number} [next_row] Number of the next row. Blank means 1.
 * @param {range} [rules] Two columns, name and value, as for PLANK_OFFCUTS.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @param {number} [rows_a_day] Rows you lay in a day. Blank for none: then nothing is said of days.
 * @param {number} [lay_first] Number of the last row that is laid before the furniture goes over to that side. Blank when all is laid in one go.
 * @return {range} What to do next, what is needed, and the rest of the cut list.
 * @customfunction
 */
function PLANK_ONWARD(runs, plank_length, laid, in_hand, whole_planks, next_row, rules, units, rows_a_day, lay_first) {
  return __plankLedger.PLANK_ONWARD.apply(null, arguments);
}

/**
 * Area of a room of any shape, walked wall by wall, with an allowance for waste.
 * Start at any corner and go round with the room on your right; the last wall must end where the first began.
 * Answers square feet, or square metres with units "metric".
 * Example: PLANK_ROOM_AREA(A2:B7, 10%) for an L-shaped room of six walls, A2:A7 their lengths, B2:B7 the turns.
 *
 * @param {range} walls Two columns, one row per wall: its length in feet (metres) or as text such as 12' 6 1/2", and the turn at its end: R, L, or degrees to the right (left negative). Blank rows at the end are ignored.
 * @param {number|string|range} [waste] Waste on top: 10%, 0.1 or 10 all mean ten per cent. Blank means none.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Area in square feet or square metres.
 * @customfunction
 */
function PLANK_ROOM_AREA(walls, waste, units) {
  return __plankLedger.PLANK_ROOM_AREA.apply(null, arguments);
}

/**
 * How many rows a room takes and how wide the first and the last come out: one line of rows, first-row width,
 * last-row width, note. The first row is a full plank unless the last would be under min_rip; then both are ripped to
 * the same width. Widths are inches, or millimetres with units "metric".
 * Example: PLANK_ROWS(10, 7.5, 0.375) is 16, 7.5, 6.75, first row full, last row ripped.
 *
 * @param {number|string|range} depth Depth of the room across the rows, wall to wall: feet (metres with "metric"), or text such as 10' 4 1/2" or 3.81 m. A column answers a line for each cell.
 * @param {number|string|range} plank_width Width of a plank's face: inches (millimetres), or text such as 7 1/2".
 * @param {number|string|range} [gap] Expansion gap at each of the two walls: inches (millimetres). Blank means 3/8 in (10 mm).
 * @param {number|string|range} [min_rip] Narrowest row you will lay: inches (millimetres). Blank means 2 in (50 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} Rows, first-row width, last-row width, note.
 * @customfunction
 */
function PLANK_ROWS(depth, plank_width, gap, min_rip, units) {
  return __plankLedger.PLANK_ROWS.apply(null, arguments);
}

/**
 * Whether the end joints of each row are far enough from those of the row before, when all rows start at the same
 * wall. One verdict per row: OK, or which joint is too near which and by how much.
 * Example: PLANK_STAGGER(A2:A10, 47.25, 8, 12.5) with the first pieces of nine rows in A2:A10, the rows 12 1/2 feet long.
 *
 * @param {range} first_pieces Length of the first piece in each row: inches (millimetres with "metric"), or text such as 23 5/8". One column or one row of cells.
 * @param {number|string|range} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m.
 * @param {number|string|range} [min_stagger] Least distance between joints of neighbouring rows: inches (millimetres); exactly this is far enough. Blank means 8 in (200 mm).
 * @param {number|string|range} [run] Length to be covered in the rows: feet (metres), or text. It says where the last joint of a row falls; blank follows the rows until their joints repeat.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} A verdict for each row; blank for a blank row, and none on the row after it.
 * @customfunction
 */
function PLANK_STAGGER(first_pieces, plank_length, min_stagger, run, units) {
  return __plankLedger.PLANK_STAGGER.apply(null, arguments);
}

/**
 * Fewest sticks of trim that give all lengths, with the saw cut between pieces. A length longer than a stick is made of
 * whole sticks and a rest; where the rest would be under a foot, it and the stick before it are cut equal.
 * Example: PLANK_TRIM(A2:A9, 16) for the walls of a room and sticks of 16 feet.
 *
 * @param {range} lengths Lengths wanted, one per cell: feet (metres with "metric"), or text such as 12' 6 1/2" or 3.81 m. Blank cells are ignored.
 * @param {number|string} stock_length Length of a stick: feet (metres), or text.
 * @param {number|string} [kerf] Width of the saw cut: inches (millimetres), or text such as 1/8". Blank means 1/8 in (3 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Sticks to buy, a whole number.
 * @customfunction
 */
function PLANK_TRIM(lengths, stock_length, kerf, units) {
  return __plankLedger.PLANK_TRIM.apply(null, arguments);
}

/**
 * Rolls of underlay or film for a rectangular room: strips side by side, in whichever direction takes fewer rolls. A
 * strip may be cut from any roll; one longer than the roll is joined end to end.
 * Example: PLANK_UNDERLAY(20, 12, 4, 25) is 3: three strips of 20 feet, one from each roll of 25.
 * Any argument may be a range: ranges of the same size go row by row, a blank row answers blank.
 *
 * @param {number|string|range} length Length of the room: feet (metres with "metric"), or text such as 12' 6 1/2" or 3.81 m.
 * @param {number|string|range} width Width of the room: feet (metres), or text with its own units.
 * @param {number|string|range} roll_width Width of the roll: feet (metres), or text such as 40".
 * @param {number|string|range} roll_length Length of the roll: feet (metres), or text.
 * @param {number|string|range} [overlap] How far a strip covers its neighbour: inches (millimetres), or text. Blank means butted.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Rolls to buy, a whole number.
 * @customfunction
 */
function PLANK_UNDERLAY(length, width, roll_width, roll_length, overlap, units) {
  return __plankLedger.PLANK_UNDERLAY.apply(null, arguments);
}

/** Checks this spreadsheet: opens the page that tries what Plank Ledger believes of spreadsheets and lists what it found. */
function checkSpreadsheet() {
  return __plankLedger.checkSpreadsheet.apply(null, arguments);
}

/**
 * Writes a tab, unless somebody has changed it since it was read.
 *
 * @param block the tab, packed
 * @param version of the tab as it was read; '' writes whatever stands there
 */
function fillTab(block, version) {
  return __plankLedger.fillTab.apply(null, arguments);
}

/** Adds the menu at once when the add-on is installed into a spreadsheet that is open. */
function onInstall() {
  return __plankLedger.onInstall.apply(null, arguments);
}

/** Adds the Plank Ledger menu. Asks for nothing else: it runs before the add-on may see the spreadsheet. */
function onOpen() {
  return __plankLedger.onOpen.apply(null, arguments);
}

/** Opens the room entry at the side of the spreadsheet. */
function openLedger() {
  return __plankLedger.openLedger.apply(null, arguments);
}

/**
 * Says at the top of a tab of ours that it no longer holds.
 *
 * @param mark what marks the tab as ours
 * @param words the line
 */
function putOnTopOfTab(mark, words) {
  return __plankLedger.putOnTopOfTab.apply(null, arguments);
}

/**
 * Reads the cells of a tab of ours.
 *
 * @param mark what marks the tab as ours
 * @param title its name, if it has not been renamed
 */
function readTabCells(mark, title) {
  return __plankLedger.readTabCells.apply(null, arguments);
}

/**
 * Gives a tab of ours another mark and name, as a renamed room needs it.
 *
 * @param mark what marks the tab as ours now
 * @param newMark what is to mark it
 * @param newTitle its name, if it is free
 */
function renameTab(mark, newMark, newTitle) {
  return __plankLedger.renameTab.apply(null, arguments);
}

/**
 * Opens a dialog over the spreadsheet with the page in it, showing one floor.
 *
 * @param data what the page is to show
 * @param width of the dialog, pixels
 * @param height of the dialog, pixels
 */
function showLargeView(data, width, height) {
  return __plankLedger.showLargeView.apply(null, arguments);
}

/**
 * Brings a tab to the front.
 *
 * @param name of the tab
 */
function showTab(name) {
  return __plankLedger.showTab.apply(null, arguments);
}

/** Says which country's spreadsheet this is: dates to be handed over are written as it writes them. */
function spreadsheetLocale() {
  return __plankLedger.spreadsheetLocale.apply(null, arguments);
}

/** Says which units the sidebar starts in: feet and inches where the spreadsheet's country uses them. */
function startUnits() {
  return __plankLedger.startUnits.apply(null, arguments);
}

/** Lists the tabs of ours. */
function tabsOfOurs() {
  return __plankLedger.tabsOfOurs.apply(null, arguments);
}

/**
 * Makes calls of the spreadsheet service for the check of this spreadsheet, each group of them on a tab of its own.
 *
 * @param groups of calls
 */
function tryCalls(groups) {
  return __plankLedger.tryCalls.apply(null, arguments);
}

/**
 * Tells what a function in a cell is given, for the check of this spreadsheet. With the one word `speed`, the milliseconds of a
 * fixed plan; with `language`, whether there is all that this script uses.
 *
 * @param given whatever the cell passes
 * @param next after it
 */
function tryInCell(given, next) {
  return __plankLedger.tryInCell.apply(null, arguments);
}

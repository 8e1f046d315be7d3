/*! Bundles three.js, fflate, Preact and its signals, all under the MIT licence: see THIRD-PARTY.md. */
"use strict";(()=>{var jt,ed,yu,Ui,_u,va,nd,ga,id,xu,vu,w0,Fr=Symbol.for("pv"),ya={},xa=[],T0=/^m(i|n|o|s|text|space)$/,bu=Array.isArray,Mu=xa.slice,as=Object.assign;function os(n){n&&n.parentNode&&n.remove()}function sd(n,t,e){var i,s,r,o={},a=arguments.length;for(r in t)r=="key"?i=t[r]:r=="ref"&&typeof n!="function"?s=t[r]:o[r]=t[r];return a>2&&(o.children=a>3?Mu.call(arguments,2):e),Ur(n,o,i,s,null)}function Ur(n,t,e,i,s){var r={type:n,props:t,key:e,ref:i,__k:null,__:null,__b:0,__e:null,__c:null,constructor:Fr,__v:s||++ed,__i:-1,__u:0};return!s&&jt.vnode&&jt.vnode(r),r}function ne(n){return n.children}function Is(n,t){this.props=n,this.context=t,this.__g=0}function Fi(n,t){if(t==null)return n.__&&Fi(n.__,n.__i+1);for(var e;t<n.__k.length;t++)if((e=n.__k[t])&&e.__e)return e.__e;return typeof n.type!="function"||n.props.__P?null:Fi(n)}function A0(n){var t,e=n.__v,i=e.__e,s=[],r=[],o=n.__P;o&&((t=as({constructor:Fr},e)).__v=e.__v+1,jt.vnode&&jt.vnode(t),Su(o,t,e,n.__n,o.namespaceURI,32&e.__u?[i]:null,s,i||Fi(e),32&e.__u,r),t.__v=e.__v,t.__.__k[t.__i]=t,ud(s,t,r),e.__=e.__e=null,t.__e!=i&&rd(t))}function rd(n){if((n=n.__)&&n.__c&&!n.props.__P)return n.__e=null,n.__k.some(function(t){return t&&(n.__e=t.__e)}),rd(n)}function Qf(n){(8&n.__g||(n.__g|=8,Ui.push(n),va++))&&_u==jt.debounceRendering||((_u=jt.debounceRendering)||queueMicrotask)(od)}function od(){try{for(var n,t=1;Ui.length;)Ui.length>t&&Ui.sort(nd),n=Ui.shift(),t=Ui.length,8&n.__g&&A0(n)}finally{(va=Ui.length)&&(_u||queueMicrotask)(od)}}function ad(n,t,e,i,s,r,o,a,l,c,u){var f,d,h,m,y,g,p=i.__k||xa,v=t.length;for(l=E0(e,t,p,l,v),f=0;f<v;f++)(h=e.__k[f])!=null&&(d=~h.__i&&p[h.__i]||ya,h.__i=f,g=Su(n,h,d,s,r,o,a,l,c,u),m=h.__e,(d.ref!=h.ref||8&d.__u)&&(d.ref&&wu(d.ref,null,h,d),h.ref&&u.push(h.ref,h.__c||m,h)),y=y||m,4&h.__u?(l=ld(h,l,n,!d.__v),d.__e&&(d.__e=null)):typeof h.type=="function"&&g!==void 0?l=g:m&&(l=m.nextSibling),h.__u&=-21);return e.__e=y,l}function E0(n,t,e,i,s){var r,o,a,l,c,u,f,d,h,m=e.length,y=m,g=0,p=0,v=n.__k=Array(s);for(r=0;r<s;r++)(o=t[r])!=null&&typeof o!="boolean"&&typeof o!="function"?(typeof o!="object"||o.constructor===String?o=v[r]=Ur(null,o):bu(o)?o=v[r]=Ur(ne,{children:o}):o.constructor===Fr&&o.__b?o=v[r]=Ur(o.type,o.props,o.key,o.ref,o.__v):v[r]=o,l=r+g,o.__=n,o.__b=n.__b+1,a=null,~(c=o.__i=C0(o,e,l,y))&&(y--,(a=e[c])&&(a.__u|=2)),a&&a.__v?(o.__u|=16,c==l-1?g--:c==l+1?g++:c!=l&&(c>l?g--:g++,p=1)):(~c||(s>m?g--:s<m&&g++),typeof o.type!="function"&&(o.__u|=4))):v[r]=null;if(p){for(u=[],f=[],r=0;r<s;r++)if((o=v[r])&&16&o.__u){for(g=0,d=u.length;g<d;)u[h=g+d>>1]<o.__i?g=h+1:d=h;u[g]=o.__i,f[r]=g+1}for(g=u.length;r--;)f[r]&&(f[r]==g?g--:v[r].__u|=4)}if(y)for(r=0;r<m;r++)!(a=e[r])||2&a.__u||(a.__e==i&&(i=Fi(a)),Tu(a,a));return i}function ld(n,t,e,i){var s,r,o,a;if(typeof n.type=="function"){if(n.props.__P)return t;if(s=n.__k)for(r=0;r<s.length;r++)s[r]&&(s[r].__=n,t=ld(s[r],t,e,!1));return t}for(t&&!t.parentNode&&(t=Fi(n))&&!t.parentNode&&(t=null),o=n.__e,a=t;a&&a.nodeType==8;)a=a.nextSibling;for(o!=a&&(!i&&e.moveBefore&&o.parentNode?e.moveBefore(o,t):e.insertBefore(o,t||null)),t=o;(t=t&&t.nextSibling)&&t.nodeType==8&&!t.data.startsWith("$s"););return t}function C0(n,t,e,i){var s,r=n.key,o=n.type,a=t[e],l=a&&!(2&a.__u);if(a===null&&r==null||l&&r==a.key&&o==a.type)return e;if(i>(l?1:0)){for(s=e-1;s>=0;s--)if((a=t[s])&&!(2&a.__u)&&r==a.key&&o==a.type)return s;for(s=e+1;s<t.length;s++)if((a=t[s])&&!(2&a.__u)&&r==a.key&&o==a.type)return s}return-1}function td(n,t,e){e==null&&(e=""),t[0]=="-"?n.setProperty(t,e):n[t]=e}function ma(n,t,e,i,s){var r,o;if(t=="style")if(typeof e=="string")n.style.cssText=e;else{if(typeof i=="string"&&(n.style.cssText=i=""),i)for(t in i)e&&t in e||td(n.style,t);if(e)for(t in e)i&&e[t]==i[t]||td(n.style,t,e[t])}else if(t[0]=="o"&&t[1]=="n")typeof e!="function"&&(e=null),typeof i!="function"&&(i=null),(n.__e||(n.__e={}))[t]=e,e&&i||(o=vu[t]||(vu[t]=R0(t)),(n.__a||(n.__a={}))[t]=xu,r=t!=(t=t.replace(id,"$1")),(t=t.slice(2))[0]<"a"&&(t=t.toLowerCase()),e?n.addEventListener(t,o,r):n.removeEventListener(t,o,r));else{if(s=="http://www.w3.org/2000/svg")t=t.replace(/xlink(H|:h)/,"h").replace(/sName$/,"s");else if(t!="width"&&t!="height"&&t!="href"&&t!="list"&&t!="form"&&t!="tabIndex"&&t!="download"&&t!="rowSpan"&&t!="colSpan"&&t!="role"&&t!="popover"&&t in n)try{return void(n[t]=e??"")}catch{}if(typeof e=="function")return;e==null||e===!1&&t[4]!="-"?n.removeAttribute(t):n.setAttribute(t,t=="popover"&&e==1?"":e)}}function R0(n){return function(t){var e=this.__e;if(e){if(e=e[n],t[ga]==null)t[ga]=xu++;else if(t[ga]<this.__a[n])return;return e(jt.event?jt.event(t):t)}}}function Su(n,t,e,i,s,r,o,a,l,c){var u,f,d,h,m,y,g,p,v,M,b,E,A,x,T,D,R,P,F=t.type;if(t.constructor!==Fr)return null;128&e.__u&&(l=32&e.__u,u=e.__c.__z)&&(t.__u|=l,f=r=[],u.nodeType==8?a=_a(u,r):r.push(u),a=r[0]||a),(u=jt.__b)&&u(t);t:if(typeof F=="function"){d=o.length;try{if(p=t.props,v=(u=F.prototype)&&u.render,M=(u=F.contextType)&&i[u.__c],b=u?M?M.props.value:u.__:i,(h=e.__c)?(t.__c=h,2&h.__g&&(h.__g|=1)):(v?t.__c=h=new F(p,b):(t.__c=h=new Is(p,b),h.constructor=F,h.render=I0),M&&M.sub(h),h.state||(h.state={}),h.__n=i,h.__g|=8,h.__h=[],h.__k=[]),v&&(h.__s||(h.__s=h.state),F.getDerivedStateFromProps&&(h.__s==h.state&&(h.__s=as({},h.__s)),as(h.__s,F.getDerivedStateFromProps(p,h.__s)))),m=h.props,y=h.state,h.__v=t,e.__c){if(p!==m&&v&&!F.getDerivedStateFromProps&&h.componentWillReceiveProps&&h.componentWillReceiveProps(p,b),t.__v==e.__v&&!(8&h.__g)||!(4&h.__g)&&h.shouldComponentUpdate&&h.shouldComponentUpdate(p,h.__s,b)===!1){t.__v!=e.__v&&(h.props=p,h.state=h.__s,h.__g&=-9),t.__e=e.__e,t.__k=e.__k,t.__k.some(function(k){k&&(k.__=t)}),xa.push.apply(h.__h,h.__k),h.__k=[],h.__h.length&&o.push(h),a=Fi(e);break t}h.componentWillUpdate&&h.componentWillUpdate(p,h.__s,b),v&&h.componentDidUpdate&&h.__h.push(function(){h.componentDidUpdate(m,y,g)})}else v&&!F.getDerivedStateFromProps&&h.componentWillMount&&h.componentWillMount(),v&&h.componentDidMount&&h.__h.push(h.componentDidMount);h.context=b,h.props=p,h.__P=n,h.__g&=-5,E=jt.__r,A=v?25:0;do h.__g&=-9,E&&E(t),u=h.render(h.props,h.state=h.__s,h.context);while(8&h.__g&&++A<25);v&&(xa.push.apply(h.__h,h.__k),h.__k=[]),h.state=h.__s,h.getChildContext&&(i=as({},i,h.getChildContext())),v&&e.__c&&h.getSnapshotBeforeUpdate&&(g=h.getSnapshotBeforeUpdate(m,y)),x=u&&u.type===ne&&u.key==null?u.props.children:u,p.__P&&(u=a,s=(n=p.__P).namespaceURI,l=r=null,e.props&&e.props.__P!=n&&(e.__k.some(function(k){k&&Tu(k,k)}),e.__k=null),a=e.__k?Fi(e,0):null),a=ad(n,bu(x)?x:[x],t,e,i,s,r,o,a,l,c),p.__P&&(t.__e=null,a=u),t.__u&=-161,f&&f.some(os),h.__h.length&&o.push(h),1&h.__g&&(h.__g&=-4)}catch(k){if(o.length=d,t.__v=null,l||r)if(k&&k.then){if(t.__u|=128|l,r){for(~(R=r.indexOf(a||void 0))||(R=r.length);(P=r[R-1])&&P.nodeType==8;)R--;for(;R<r.length;R++)if(P=r[R])if(r[R]=null,T){if(P==D)break}else{if(P.nodeType!=8)break;P.data.startsWith("$s")&&(D=_a(T=P))}}if(!T){for(;a&&a.nodeType==8&&a.nextSibling;)a=a.nextSibling;T=a}(u=_a(T=t.__c.__z||(t.__c.__z=T)))?(t.__e=T,a=u):t.__e=a,a=a&&a.nextSibling}else r&&r.some(os);else t.__e=e.__e;t.__k||(t.__k=e.__k||[]),k&&k.then||cd(t),jt.__e(k,t,e)}}else a=t.__e=P0(e.__e,t,e,i,s,r,o,l,c,n);return(u=jt.diffed)&&u(t),a}function _a(n,t){if(n&&n.nodeType==8&&n.data.startsWith("$s"))for(var e=1;n=n.nextSibling;){if(n.nodeType==8){if(n.data.startsWith("$s"))e++;else if(n.data.startsWith("/$s")&&!--e)return n}t&&t.push(n)}}function cd(n){n&&(n.__c&&(n.__c.__g|=4),n.__k&&n.__k.some(cd))}function ud(n,t,e){for(var i=0;i<e.length;)wu(e[i++],e[i++],e[i++]);jt.__c&&jt.__c(t,n),n.some(function(s){try{n=s.__h,s.__h=[],n.some(function(r){r.call(s)})}catch(r){jt.__e(r,s.__v)}})}function P0(n,t,e,i,s,r,o,a,l,c){var u,f,d,h,m,y,g,p,v=e.props||ya,M=t.props,b=t.type;if(b=="svg"?s="http://www.w3.org/2000/svg":b=="math"?s="http://www.w3.org/1998/Math/MathML":s||(s="http://www.w3.org/1999/xhtml"),r){for(u=0;u<r.length;u++)if((m=r[u])&&(b?m.localName==b:m.nodeType==3)){n=m,r[u]=null;break}}if(!n){if(p=c.ownerDocument||document,!b)return p.createTextNode(M);n=p.createElementNS(s,b,M.is?M:c),a&&(jt.__m&&jt.__m(t,r),a=!1),r=null}if(b){if(c=b=="template"&&n.content||n,r=b=="textarea"&&M.defaultValue!=null?null:r&&Mu.call(c.childNodes),!a&&r)for(v={},u=0;u<n.attributes.length;u++)v[(m=n.attributes[u]).name]=m.value;for(u in v)m=v[u],u=="dangerouslySetInnerHTML"?d=m:u=="children"||u in M||u=="value"&&"defaultValue"in M||u=="checked"&&"defaultChecked"in M||ma(n,u,null,m,s);for(u in M)m=M[u],u=="children"?h=m:u=="dangerouslySetInnerHTML"?f=m:u=="value"?y=m:u=="checked"?g=m:a&&typeof m!="function"||v[u]===m||ma(n,u,m,v[u],s);f?(a||d&&(f.__html==d.__html||f.__html==n.innerHTML)||(n.innerHTML=f.__html),t.__k=[]):(d&&(n.textContent=""),(b=="foreignObject"||s=="http://www.w3.org/1998/Math/MathML"&&T0.test(b))&&(s="http://www.w3.org/1999/xhtml"),ad(c,bu(h)?h:[h],t,e,i,s,r,o,r?r[0]:e.__k&&Fi(e,0),a,l),r&&r.some(os)),a&&b!="textarea"||(u="value",b=="progress"&&y==null?n.removeAttribute(u):y==null||y===n[u]&&(b!="progress"||y)||ma(n,u,y,v[u],s),u="checked",g!=null&&g!=n[u]&&ma(n,u,g,v[u],s))}else v===M||a&&n.data==M||(n.data=M);return n}function wu(n,t,e,i){try{typeof n=="function"?t?t.__x=n(t)||1:i&&(i=i.__c||i.__e)&&(t=i.__x)&&(i.__x=null,typeof t=="function"?t():n(null)):n.current=t}catch(s){jt.__e(s,e)}}function Tu(n,t,e){var i,s,r,o;if(jt.unmount&&jt.unmount(n),!(i=n.ref)||i.current&&i.current!=n.__e||wu(i,null,t,n),i=n.__c){if(i.componentWillUnmount)try{i.componentWillUnmount()}catch(a){jt.__e(a,t)}i.__P=i.__n=null}if(i=n.__k)for(o=0;o<i.length;o++)i[o]&&Tu(i[o],t,typeof n.type!="function"||e&&!n.props.__P);!e&&(i=n.__c)&&(i=i.__z)&&(s=_a(i,r=[]))&&(i==n.__e&&r.some(os),os(s),os(i)),e||os(n.__e),n.__e=n.__c=n.__=null}function I0(n,t,e){return this.constructor(n,e)}function hd(n,t){var e,i,s,r;jt.__&&jt.__(n,t),t.nodeType==9&&(t=t.documentElement),i=(e=n&&32&n.__u)?null:t.__k,t.__k=Ur(ne,{children:[n]}),s=[],r=[],Su(t,t.__k,i||ya,ya,t.namespaceURI,i?null:t.firstChild?Mu.call(t.childNodes):null,s,i?i.__e:t.firstChild,e,r),ud(s,t.__k,r),t.__k.props.children=null}jt={__e:function(n,t,e,i){for(var s,r,o;t=t.__;)if((s=t.__c)&&!(1&s.__g)){s.__g|=4;try{if((o=(r=s.constructor)&&r.getDerivedStateFromError)&&s.setState(r.getDerivedStateFromError(n)),s.componentDidCatch&&(s.componentDidCatch(n,i||{}),o=1),o&&8&s.__g)return void(s.__g|=2)}catch(a){n=a}}throw va=0,n}},ed=0,yu=function(n){return n!=null&&n.constructor===Fr},Is.prototype.setState=function(n,t){var e=this.__s;e&&e!=this.state||(e=this.__s=as({},this.state)),typeof n=="function"&&(n=n(as({},e),this.props)),n&&(as(e,n),this.__v&&(t&&this.__k.push(t),Qf(this)))},Is.prototype.forceUpdate=function(n){this.__v&&(this.__g|=4,n&&this.__h.push(n),Qf(this))},Is.prototype.render=ne,Ui=[],va=0,nd=function(n,t){return n.__v.__b-t.__v.__b},ga=Symbol(),id=/(PointerCapture)$|Capture$/i,xu=0,vu={},w0=0;var Ke=class extends Error{constructor(e,i,s,r=!1){super(s);this.status=e;this.trouble=i;this.anyway=r}status;trouble;anyway},Au="secret",Ds={"X-Sequencer-Secret":""};async function fd(){let n=location.hash.slice(1);if(n&&history.replaceState(null,"",location.pathname),n.startsWith("ticket=")){let t=await fetch("/enter",{method:"POST",headers:{"content-type":"application/json"},body:JSON.stringify({ticket:n.slice(7)})});t.ok&&sessionStorage.setItem(Au,(await t.json()).secret)}else n&&sessionStorage.setItem(Au,n);Ds["X-Sequencer-Secret"]=sessionStorage.getItem(Au)||""}async function Or(n){let t=await n.text(),e=null;try{e=JSON.parse(t)}catch{}if(n.ok)return e;let i=e?.error??null,s=i?.message??`The server answered with ${n.status}.`;throw new Ke(n.status,i,s,!!e?.error?.anyway)}async function me(n){return Or(await fetch(`/api/${n}`,{headers:Ds}))}async function je(n,t){return Or(await fetch(`/api/${n}`,{method:"POST",headers:{...Ds,"content-type":"application/json"},body:JSON.stringify(t)}))}async function dd(n){return Or(await fetch(`/api/song-file?name=${encodeURIComponent(n.name)}`,{method:"POST",headers:Ds,body:n}))}async function pd(n){let t=await fetch(`/api/${n}`,{headers:Ds});return t.ok||await Or(t),t.arrayBuffer()}async function md(n){let t=await fetch("/api/events",{headers:Ds});if(!t.ok||!t.body)return Or(t);let e=t.body.pipeThrough(new TextDecoderStream).getReader(),i="";for(;;){let{done:s,value:r}=await e.read();if(s)return;i+=r;let o=i.split(`

`);i=o.pop();for(let a of o){let l="message",c="";for(let u of a.split(`
`))u.startsWith("event:")?l=u.slice(6).trim():u.startsWith("data:")&&(c+=u.slice(5).trim());c&&n(l,JSON.parse(c))}}}var kr,Ue,Eu,gd,Cu=Object.is,ba=0,Td=[],Ru=[],Ie=jt,_d=Ie.__b,vd=Ie.__r,yd=Ie.diffed,xd=Ie.__c,bd=Ie.unmount,Md=Ie.__;function Iu(n,t){Ie.__h&&Ie.__h(Ue,n,ba||t),ba=0;var e=Ue.__H||(Ue.__H={__:[],__h:[]});return n>=e.__.length&&e.__.push({}),e.__[n]}function It(n){return ba=1,D0(Ed,n)}function D0(n,t,e){var i=Iu(kr++,2);if(i.t=n,!i.__c&&(i.__=[e?e(t):Ed(void 0,t),function(r){var o=(i.__N||i.__)[0],a=i.t(o,r);Cu(o,a)||(i.__N=[a,i.__[1]],i.__c.setState({}))}],i.__c=Ue,!Ue.__f)){Ue.__f=!0;var s=Ue.shouldComponentUpdate;Ue.shouldComponentUpdate=function(r,o,a){var l=this.__H;if(!l)return!0;var c=!1,u=this.props!=r;if(l.__.some(function(d){d.__N&&(c=!0,Cu(d.__[0],d.__N[0])||(u=!0))}),s){var f=s.call(this,r,o,a);return c?f||u:f}return!c||u}}return i.__}function xe(n,t){var e=Iu(kr++,3);!Ie.__s&&Ad(e.__H,t)&&(e.__P=!0,e.__=n,e.u=t,Ue.__H.__h.push(e))}function ge(n){return ba=5,Ma(function(){return{current:n}},[])}function Ma(n,t){var e=Iu(kr++,7);return Ad(e.__H,t)&&(e.__=n(),e.__H=t),e.__}function L0(){var n;do{for(;n=Ru.shift();)try{Br(n)}catch(e){Ie.__e(e,{__:(n=n.__P)&&n.__v})}for(;n=Td.shift();){var t=n.__H;if(n.__P&&t)try{t.__h.some(Br),t.__h.some(Pu),t.__h=[]}catch(e){t.__h=[],Ie.__e(e,n.__v)}}}while(Ru.length)}Ie.__b=function(n){Ue=null,_d&&_d(n)},Ie.__=function(n,t){n&&t.__k&&t.__k.__m&&(n.__m=t.__k.__m),Md&&Md(n,t)},Ie.__r=function(n){vd&&vd(n),kr=0;var t=(Ue=n.__c).__H;t&&(Eu==Ue?Ue.__h=[]:(t.__h.some(Br),t.__h.some(Pu),kr=0),t.__h=[],t.__.some(function(e){e.__N&&(e.__=e.__N),e.u=e.__N=void 0})),Eu=Ue},Ie.diffed=function(n){yd&&yd(n);var t=n.__c;t&&t.__H&&(t.__H.__h.length&&wd(Td.push(t)),t.__H.__.some(function(e){e.u&&(e.__H=e.u)})),Eu=Ue=null},Ie.__c=function(n,t){t.some(function(e){try{e.__h.some(Br),e.__h=e.__h.filter(function(i){return!i.__||Pu(i)})}catch(i){e.__h=[function(){throw i}]}}),xd&&xd(n,t)},Ie.unmount=function(n){bd&&bd(n);var t,e,i=n.__c;i&&i.__H&&(i.__H.__.some(function(s){try{if(s.__P&&s.__c){if(e===void 0){for(e=n.__;e&&(!e.__c||!e.__c.__P);)e=e.__;e=e&&e.__c}s.__P=e,wd(Ru.push(s))}else Br(s)}catch(r){t=r}}),i.__H=void 0,t&&Ie.__e(t,i.__v))};var Sd=typeof requestAnimationFrame=="function";function N0(n){var t,e=function(){clearTimeout(i),Sd&&cancelAnimationFrame(t),setTimeout(n)},i=setTimeout(e,35);Sd&&(t=requestAnimationFrame(e))}function wd(n){n!=1&&gd==Ie.requestAnimationFrame||((gd=Ie.requestAnimationFrame)||N0)(L0)}function Br(n){var t=Ue,e=n.__c;typeof e=="function"&&(n.__c=void 0,e()),Ue=t}function Pu(n){var t=Ue;n.__c=n.__(),Ue=t}function Ad(n,t){return!n||n.length!=t.length||t.some(function(e,i){return!Cu(e,n[i])})}function Ed(n,t){return typeof t=="function"?t(n):t}var U0=Symbol.for("preact-signals");function Aa(){if(mi>1)mi--;else{var n,t=!1;for((function(){var s=wa;for(wa=void 0;s!==void 0;){var r=s.S;if(r.v===s.v)for(var o=r.t;o!==void 0;o=o.x)o.i===s.i&&(o.i=r.i);s=s.o}})();Vr!==void 0;){var e=Vr;for(Vr=void 0,Sa++;e!==void 0;){var i=e.u;if(e.u=void 0,e.f&=-3,!(8&e.f)&&Rd(e))try{e.c()}catch(s){t||(n=s,t=!0)}e=i}}if(Sa=0,mi--,t)throw n}}function Lu(n){if(mi>0)return n();Du=++F0,mi++;try{return n()}finally{Aa()}}var zr,be=void 0;function Gr(n){var t=be,e=zr;be=void 0,zr=void 0;try{return n()}finally{be=t,zr=e}}var Vr=void 0,mi=0,Sa=0,F0=0,Du=0,wa=void 0,Ta=0;function Cd(n){if(be!==void 0){var t=n.n;if(t===void 0||t.t!==be)return t={i:0,S:n,p:be.s,n:void 0,t:be,e:void 0,x:void 0,r:t},be.s!==void 0&&(be.s.n=t),be.s=t,n.n=t,32&be.f&&n.S(t),t;if(t.i===-1)return t.i=0,t.n!==void 0&&(t.n.p=t.p,t.p!==void 0&&(t.p.n=t.n),t.p=be.s,t.n=void 0,be.s.n=t,be.s=t),t}}function Fe(n,t){this.v=n,this.i=0,this.n=void 0,this.t=void 0,this.l=0,this.W=t?.watched,this.Z=t?.unwatched,this.name=t?.name}Fe.prototype.brand=U0;Fe.prototype.h=function(){return!0};Fe.prototype.S=function(n){var t=this,e=this.t;e!==n&&n.e===void 0&&(n.x=e,this.t=n,e!==void 0?e.e=n:Gr(function(){var i;(i=t.W)==null||i.call(t)}))};Fe.prototype.U=function(n){var t=this;if(this.t!==void 0){var e=n.e,i=n.x;e!==void 0&&(e.x=i,n.e=void 0),i!==void 0&&(i.e=e,n.x=void 0),n===this.t&&(this.t=i,i===void 0&&Gr(function(){var s;(s=t.Z)==null||s.call(t)}))}};Fe.prototype.subscribe=function(n){var t=this;return Nn(function(){var e=t.value;Gr(function(){return n(e)})},{name:"sub"})};Fe.prototype.valueOf=function(){return this.value};Fe.prototype.toString=function(){return this.value+""};Fe.prototype.toJSON=function(){return this.value};Fe.prototype.peek=function(){var n=this;return Gr(function(){return n.value})};Object.defineProperty(Fe.prototype,"value",{get:function(){var n=Cd(this);return n!==void 0&&(n.i=this.i),this.v},set:function(n){if(n!==this.v){if(Sa>100)throw new Error("Cycle detected");(function(e){mi!==0&&Sa===0&&e.l!==Du&&(e.l=Du,wa={S:e,v:e.v,i:e.i,o:wa})})(this),this.v=n,this.i++,Ta++,mi++;try{for(var t=this.t;t!==void 0;t=t.x)t.t.N()}finally{Aa()}}}});function Zt(n,t){return new Fe(n,t)}function Rd(n){for(var t=n.s;t!==void 0;t=t.n)if(t.S.i!==t.i||!t.S.h()||t.S.i!==t.i)return!0;return!1}function Pd(n){for(var t=n.s;t!==void 0;t=t.n){var e=t.S.n;if(e!==void 0&&(t.r=e),t.S.n=t,t.i=-1,t.n===void 0){n.s=t;break}}}function Id(n){for(var t=n.s,e=void 0;t!==void 0;){var i=t.p;t.i===-1?(t.S.U(t),i!==void 0&&(i.n=t.n),t.n!==void 0&&(t.n.p=i)):e=t,t.S.n=t.r,t.r!==void 0&&(t.r=void 0),t=i}n.s=e}function ls(n,t){Fe.call(this,void 0,t),this.x=n,this.s=void 0,this.g=Ta-1,this.f=4}ls.prototype=new Fe;ls.prototype.h=function(){if(this.f&=-3,1&this.f)return!1;if((36&this.f)==32||(this.f&=-5,this.g===Ta))return!0;if(this.g=Ta,this.f|=1,this.i>0&&!Rd(this))return this.f&=-2,!0;var n=be;try{Pd(this),be=this;var t=this.x();(16&this.f||this.v!==t||this.i===0)&&(this.v=t,this.f&=-17,this.i++)}catch(e){this.v=e,this.f|=16,this.i++}return be=n,Id(this),this.f&=-2,!0};ls.prototype.S=function(n){if(this.t===void 0){this.f|=36;for(var t=this.s;t!==void 0;t=t.n)t.S.S(t)}Fe.prototype.S.call(this,n)};ls.prototype.U=function(n){if(this.t!==void 0&&(Fe.prototype.U.call(this,n),this.t===void 0)){this.f&=-33;for(var t=this.s;t!==void 0;t=t.n)t.S.U(t)}};ls.prototype.N=function(){if(!(2&this.f)){this.f|=6;for(var n=this.t;n!==void 0;n=n.x)n.t.N()}};Object.defineProperty(ls.prototype,"value",{get:function(){if(1&this.f)throw new Error("Cycle detected");var n=Cd(this);if(this.h(),n!==void 0&&(n.i=this.i),16&this.f)throw this.v;return this.v}});function Gn(n,t){return new ls(n,t)}function Dd(n){var t=n.j;if(n.j=void 0,typeof t=="function"){mi++;var e=be;be=void 0;try{t()}catch(i){throw n.f&=-2,n.f|=8,Nu(n),i}finally{be=e,Aa()}}}function Nu(n){for(var t=n.s;t!==void 0;t=t.n)t.S.U(t);n.x=void 0,n.s=void 0,Dd(n)}function O0(n){if(be!==this)throw new Error("Out-of-order effect");Id(this),be=n,this.f&=-2;try{8&this.f&&Nu(this)}finally{Aa()}}function Ls(n,t){this.x=n,this.j=void 0,this.s=void 0,this.u=void 0,this.f=32,this.name=t?.name,zr&&zr.push(this)}Ls.prototype.c=function(){var n=this.S();try{if(8&this.f||this.x===void 0)return;var t=this.x();typeof t=="function"&&(this.j=t)}finally{n()}};Ls.prototype.S=function(){if(1&this.f)throw new Error("Cycle detected");this.f|=1,this.f&=-9,Dd(this),Pd(this),mi++;var n=be;return be=this,O0.bind(this,n)};Ls.prototype.N=function(){2&this.f||(this.f|=2,this.u=Vr,Vr=this)};Ls.prototype.d=function(){this.f|=8,1&this.f||Nu(this)};Ls.prototype.dispose=function(){this.d()};function Nn(n,t){var e=new Ls(n,t);try{e.c()}catch(s){throw e.d(),s}var i=e.d.bind(e);return i[Symbol.dispose]=i,i}var Ld,Ca,Ea,B0=typeof window<"u"&&!!window.__PREACT_SIGNALS_DEVTOOLS__;var Nd=[];Nn(function(){Ld=this.N})();function Ns(n,t){jt[n]=t.bind(null,jt[n]||function(){})}function Hr(n){if(Ea){var t=Ea;Ea=void 0,t()}Ea=n&&n.S()}function Ud(n){var t=this,e=n.data,i=z0(e);i.name="ReactiveDom",i.value=e;var s=Ma(function(){for(var a=t,l=t.__v;l=l.__;)if(l.__c){l.__c.__$f|=4;break}var c=Gn(function(){var h=i.value.value;return h===0?0:h===!0?"":h||""}),u=Gn(function(){return!Array.isArray(c.value)&&!yu(c.value)}),f=Nn(function(){if(this.N=Fd,u.value){var h=c.value;a.__v&&a.__v.__e&&a.__v.__e.nodeType===3&&(a.__v.__e.data=h)}}),d=t.__$u.d;return t.__$u.d=function(){f(),d.call(this)},[u,c]},[]),r=s[0],o=s[1];return r.value?o.peek():o.value}Ud.displayName="ReactiveTextNode";Object.defineProperties(Fe.prototype,{constructor:{configurable:!0,value:sd(ne,null).constructor},type:{configurable:!0,value:Ud},props:{configurable:!0,get:function(){var n=this;return{data:{get value(){return n.value}}}}},__b:{configurable:!0,value:1}});Ns("__b",function(n,t){if(Hr(),Ca=void 0,typeof t.type=="string"){var e,i=t.props;for(var s in i)if(s!=="children"){var r=i[s];r instanceof Fe&&(e||(t.__np=e={}),e[s]=r,i[s]=r.peek())}}n(t)});Ns("__r",function(n,t){if(n(t),t.type!==ne){Hr();var e,i=t.__c;i&&(i.__$f&=-2,(e=i.__$u)===void 0&&(i.__$u=e=(function(s,r){var o;return Nn(function(){o=this},{name:r}),o.c=s,o})((function(s){return function(){var r;B0&&((r=this.y)==null||r.call(this)),s.__$f|=1,s.setState({})}})(i),typeof t.type=="function"?t.type.displayName||t.type.name:""))),Ca=i,Hr(e)}});Ns("__e",function(n,t,e,i){Hr(),Ca=void 0,n(t,e,i)});Ns("diffed",function(n,t){Hr(),Ca=void 0;var e;if(typeof t.type=="string"&&(e=t.__e)){var i=t.__np,s=t.props,r=e.U;if(r)for(var o in r){var a=r[o];a===void 0||i&&o in i||(a.d(),r[o]=void 0)}if(i){r||(r={},e.U=r);for(var l in i){var c=r[l],u=i[l];c===void 0?(c=k0(e,l,u,s),r[l]=c):c.o(u,s)}}}n(t)});function k0(n,t,e,i){var s=t in n&&n.ownerSVGElement===void 0,r=Zt(e);return{o:function(o,a){r.value=o,i=a},d:Nn(function(){this.N=Fd;var o=r.value.value;i[t]!==o&&(i[t]=o,s?n[t]=o:o!=null&&(o!==!1||t[4]==="-")?n.setAttribute(t,o):n.removeAttribute(t))})}}Ns("unmount",function(n,t){if(typeof t.type=="string"){var e=t.__e;if(e){var i=e.U;if(i){e.U=void 0;for(var s in i){var r=i[s];r&&r.d()}}}var o=t.__np;if(o){var a=t.props;for(var l in o)a[l]=o[l]}t.__np=void 0}else{var c=t.__c;if(c){c.__$f|=8;var u=c.__$u;u&&(c.__$u=void 0,u.d())}}n(t)});Ns("__h",function(n,t,e,i){i<3&&(t.__$f|=2),n(t,e,i)});Is.prototype.shouldComponentUpdate=function(n,t){if(this.__R)return!0;var e=this.__$u,i=e&&e.s!==void 0;for(var s in t)return!0;if(this.__f||typeof this.u=="boolean"&&this.u===!0){var r=2&this.__$f;if(!(i||r||4&this.__$f)||1&this.__$f)return!0}else if(!(i||4&this.__$f)||3&this.__$f)return!0;for(var o in n)if(o!=="__source"&&n[o]!==this.props[o])return!0;for(var a in this.props)if(!(a in n))return!0;return!1};function z0(n,t){return Ma(function(){return Zt(n,t)},[])}var V0=function(n){queueMicrotask(function(){queueMicrotask(n)})};function G0(){Lu(function(){for(var n;n=Nd.shift();)Ld.call(n)})}function Fd(){Nd.push(this)===1&&(jt.requestAnimationFrame||V0)(G0)}function Od(n,t,e,i){let s=[],r=Math.min(1,n.position(e+1e-6).bar);for(;n.barStart(r)<i-1e-6;){let o=n.barStart(r),l=t.some(u=>Math.abs(u.start_beat-n.barStart(r+1))<.5)?r+1:r+2,c=H0(t,o+.5);s.push({section:c,heads:c!==null&&c!==s[s.length-1]?.section,start:o,beats:n.barStart(l)-o,bar:r}),r=l}return s}function H0(n,t){return n.find(e=>t>=e.start_beat&&t<e.end_beat)??null}function Uu(n,t,e){let i=new Map;for(let s of t){let r=(e.get(s)??[]).filter(l=>l.end>n.start+1e-6&&l.start<n.start+n.beats-1e-6),o=r.map(l=>[l.kind,l.title,l.start.toFixed(4),l.end.toFixed(4),l.path?.join("/"),l.entry?.join("/")].join("|")).join(";"),a=i.get(o);a?a.who.push(s):i.set(o,{who:[s],blocks:r})}return[...i.values()]}function Fu(n,t){let e=n.filter(i=>i.start<=t+1e-6&&i.end>t+1e-6);return e.find(i=>i.path!==null&&i.kind!=="link")??e[0]??null}function Us(n,t){return n.length===t.length&&n.length>1?"everybody":n.length>1?`${n.slice(0,-1).join(", ")} and ${n[n.length-1]}`:n[0]??"nobody"}function xn(n,t){let{bar:e,beat:i}=n.position(t+1e-6),s=Math.floor(i),r=Math.round((i-s)*1e3)/1e3;return r<.001?`${e}.${s}`:`${e}.${s}+${r}`}function Bd(n){return n.flatMap((t,e)=>{let i=n[e+1];return i&&i.start>t.end+1e-6&&i.start-t.end<=W0+1e-6?[{start:t.end,end:i.start}]:[]})}var W0=4;function Ou(n,t){let e=0,i=n.length;for(;e<i;){let s=e+i>>1;n[s]<=t?e=s+1:i=s}return e-1}var cs=class{constructor(t,e,i,s){this.times=t;this.first=e;this.bars=i;this.metre=s}times;first;bars;metre;beatAt(t){let e=Math.min(Math.max(Ou(this.times,t),0),this.times.length-2),i=this.times[e+1]-this.times[e];return this.first+e+(t-this.times[e])/i}secondsAt(t){let e=t-this.first,i=Math.min(Math.max(Math.floor(e),0),this.times.length-2);return this.times[i]+(e-i)*(this.times[i+1]-this.times[i])}rateAt(t){let e=Math.min(Math.max(Ou(this.times,t),0),this.times.length-2);return 1/(this.times[e+1]-this.times[e])}barStart(t){return t<1?(t-1)*this.metre:t<=this.bars.length?this.bars[t-1]:this.bars[this.bars.length-1]+(t-this.bars.length)*this.metre}position(t){let e;t<0?e=1+Math.floor(t/this.metre):(e=Ou(this.bars,t)+1,e===this.bars.length&&(e+=Math.floor((t-this.bars[e-1])/this.metre)));let i=this.barStart(e);return{bar:e,beat:t-i+1,inBar:this.barStart(e+1)-i}}text(t){let{bar:e,beat:i}=this.position(t+1e-6);return`${e}.${Math.floor(i)}`}};var wt=Zt(null),Wt=Zt(null),Os=Zt(null),Hn=Zt(null),Bs=Zt(null),ks=Zt([]),Wn=Zt(null),Fs=Zt([]),ti=Zt(null),Qe=Zt(null),Un=Zt(!1),zs=Zt(!1),Vs=Zt(null),ei=Zt(""),nn=Zt(null),us=Zt(null),Wr=Zt(!1),bn=Zt(0),Xr=Zt(!1),ue=Zt("findings"),qr=Zt(null),Me=Gn(()=>Wt.value?.cast.map(n=>n.name)??[]),Ce=Gn(()=>{let n=Wt.value?.tempo;return n?new cs(n.times,n.first,n.bars,n.metre):null}),Ra=Gn(()=>Wt.value!==null&&Wt.value.revision===wt.value?.revision),Pa=Gn(()=>{let n=new Map;for(let t of Wt.value?.blocks??[]){let e=n.get(t.who);e?e.push(t):n.set(t.who,[t])}return n});function Yr(n){Qe.value=n,nn.value=null}var kd=null;function zd(n){kd=n}function Ia(n){bn.value=n,kd?.(n)}var X0=0;function hs(n,t=!1){let e=++X0;Fs.value=[...Fs.value.slice(-3),{id:e,words:n,warn:t}],setTimeout(()=>Fs.value=Fs.value.filter(i=>i.id!==e),t?3e4:1e4)}async function ni(n,t,e){Wr.value=!0,nn.value=null;try{return Gs(await n()),t&&(ei.value=t),!0}catch(i){let s=i instanceof Ke||!(i instanceof TypeError)?String(i.message??i):"The program behind this page does not answer.";return nn.value={words:s,anyway:i instanceof Ke&&i.anyway&&e?e:null},ei.value=s,i instanceof Ke&&i.status===409&&Gs(await me("show")),!1}finally{Wr.value=!1}}function Gs(n){wt.value&&n.revision<wt.value.revision||(n.recovered&&n.recovered!==wt.value?.recovered&&hs(n.recovered),wt.value=n)}function ie(n,t,e=wt.value.revision,i=!1){let s=Array.isArray(n)?{operations:n}:{operation:n};return ni(()=>je("operations",{revision:e,...s,anyway:i}),t,()=>{ie(n,t,e,!0)})}var La=()=>wt.value?.undo&&ni(()=>je("undo",{}),`Undone: ${wt.value?.undo}.`),$r=()=>wt.value?.redo&&ni(()=>je("redo",{}),`Done again: ${wt.value?.redo}.`),Na=()=>ni(()=>je("save",{}),"Saved."),Bu=0;async function ku(){let n=++Bu;try{let t=await me("view");if(n!==Bu)return;Wt.value=t,Wn.value=null}catch(t){n===Bu&&t instanceof Ke&&t.status===422&&(Wn.value=t.message)}}async function zu(){let n=await me("findings"),t=n.findings??[];Hn.value={...n,open:n.open??[],drawn:n.drawn??[],findings:t,entries:n.complete&&n.entries?n.entries:q0(t),unseen:n.unseen??[],cautions:n.cautions??[]}}function q0(n){let t={stop:0,warn:1,note:2};return n.map((e,i)=>({severity:e.severity,start:e.start,position:e.position,message:e.message,remedies:e.remedies,of:[i]})).sort((e,i)=>t[e.severity]-t[i.severity]||(e.start??0)-(i.start??0))}async function Ua(){try{let n=await me("song");n.hearing!==void 0?setTimeout(()=>{Ua()},1e3):Os.value=n}catch(n){if(n instanceof Ke&&n.status===409)return;hs(n instanceof Error?n.message:String(n),!0)}}async function Da(){Gs(await me("show"))}function Vd(n,t){n==="show"?(t.words&&t.revision>(wt.value?.revision??0)&&(ei.value=t.words),!wt.value||t.revision>wt.value.revision?Da():wt.value={...wt.value,...t,text:wt.value.text,values:wt.value.values}):n==="staged"?t.error?Wn.value=t.error.message:(ku(),Os.value||Ua()):n==="checks"?Bs.value=t:n==="findings"?zu():n==="outside"?Da():n==="notice"&&hs(t.message,t.severity==="warn")}function Fa(n){let t=new Map;for(let e of n){let i=e.entry??e.path;if(!i||i[0]!=="timeline")continue;let s=i.join("/"),r=t.get(s);(!r||e.start<r.start)&&t.set(s,{path:i,start:e.start})}return[...t.values()].sort((e,i)=>e.start-i.start)}async function Zr(n){let t=Fa(n);if(!t.length)return nn.value={words:"Nothing is written here that could be copied.",anyway:null},!1;let e=await je("copied",{revision:wt.value.revision,at:t.map(i=>i.path)});return Vs.value={blocks:e.blocks,starts:t.map(i=>i.start-t[0].start),words:n[0].title},ei.value=`Copied: ${n[0].title}.`,!0}async function Oa(n){let t=Fa(n);await Zr(n)&&await ie(Vu(t.map(e=>e.path)),`Cut: ${n[0].title}.`)}function Vu(n){let t=wt.value?.values?.timeline??[],e=new Set(n.map(r=>Number(r[1]))),i=new Set,s=[];return t.forEach((r,o)=>{let a=Y0(r);if(e.has(o))a.forEach(l=>i.add(l));else if(a.some(l=>i.has(l))){let l="from"in r||"accent"in r?null:$0(o);l!==null&&s.push({do:"change-block",at:["timeline",o],values:{from:l}}),a.forEach(c=>i.delete(c))}}),[...s,{do:"delete-blocks",at:n}]}function Y0(n){return n.who===void 0||n.who==="all"?Me.value:[n.who].flat()}function $0(n){let e=(Wt.value?.blocks??[]).filter(i=>i.entry?.[0]==="timeline"&&i.entry[1]===n).reduce((i,s)=>i===null||s.start<i.start?s:i,null);return e&&Ce.value?xn(Ce.value,e.start):null}async function Ba(n,t){let e=Qe.value,i=Vs.value;if(!e||!i)return;let s=i.starts.map(r=>n(e.beat+r));await ie({do:"paste-blocks",into:["timeline"],blocks:i.blocks,starts:s,before:t(e.beat)},`Pasted: ${i.words}.`)}var fs=Zt(null),Hs=Zt(null),Z0={done:"is ready",failed:"could not be made",stopped:"was stopped"};async function ka(){[fs.value,Hs.value]=await Promise.all([me("draft"),me("print")])}var Gu=0;Nn(()=>{let n=wt.value?.revision??0;Gu&&n!==Gu&&(fs.peek()?.state==="done"||Hs.peek()?.state==="done")&&ka().catch(()=>{}),Gu=n});function Gd(n){let t=n.kind==="draft"?fs:Hs;if(n.state==="working"&&t.value&&t.value.state==="working"){t.value={...t.value,...n};return}let e=t.value?.state;ka().then(()=>{let i=Z0[n.state];e==="working"&&i&&(ei.value=`${n.kind==="draft"?"The draft":"What you asked for"} ${i}.`)},()=>{})}async function cn(n,t={}){nn.value=null;try{let e=await je(n,t);return n.startsWith("draft")?fs.value=e:n.startsWith("begin")||(Hs.value=e),!0}catch(e){let i=e instanceof Ke||!(e instanceof TypeError)?e.message:"The program behind this page does not answer.";return nn.value={words:i,anyway:null},ei.value=i,!1}}function Hd(n){return n<60?`${Math.round(n)} s`:`${Math.floor(n/60)} min ${Math.round(n%60)} s`}var J0=Symbol.for("pv"),K0=0;function _(n,t,e,i,s,r){t||(t={});var o,a,l=t;if("ref"in l&&typeof n!="function")for(a in l={},t)a=="ref"?o=t[a]:l[a]=t[a];var c={type:n,props:l,key:e,ref:o,__k:null,__:null,__b:0,__e:null,__c:null,constructor:J0,__v:--K0,__i:-1,__u:0};return(s||r)&&(c.__source=s,c.__self=r),jt.vnode&&jt.vnode(c),c}var j0=6,za=Zt(!1);function Jr(n,t){let e=ge(!1);xe(()=>{let i=document.activeElement,s=!i||i===document.body||i.closest("[hidden]");(e.current||za.value)&&s&&n.current?.querySelector("h2, h3")?.focus({preventScroll:!0}),e.current=!0,za.value=!1},[t])}function Wd(){let n=fs.value,t=ge(null);return Jr(t,n?.state),wt.value?.readable?_("div",{ref:t,class:"drafting",children:n?.state==="working"?_(s_,{now:n}):n?.state==="done"&&n.offer?_(r_,{now:n}):_(Q0,{now:n})}):_("p",{class:"quiet",children:"The file cannot be read as a show: mend it under Text, then a routine can be drafted."})}function Q0({now:n}){let t=i_(),e=Qe.value?Xd(Qe.value.beat):null,i=Wt.value?.sections??[],[s,r]=It(""),[o,a]=It(0),l=c=>{cn("draft",{seed:o,...c})};return _(ne,{children:[_("h3",{tabIndex:-1,children:"A routine for this song"}),_("p",{children:"Fills what is empty with moves that everybody can dance at this tempo, and checks the whole. What you wrote yourself is left as it is. You see it first, then you decide."}),n?.state==="failed"&&_("p",{class:"fault",role:"alert",children:n.error?.message}),n?.state==="stopped"&&_("p",{class:"fault",children:Ws(n.words)}),_("p",{class:"row",children:[_("button",{type:"button",class:"main",onClick:()=>l({}),children:t?"Draft anew what was drafted":"Draft what is empty"}),t&&_("button",{type:"button",onClick:()=>l({another:!0}),children:"Another routine"})]}),_("fieldset",{children:[_("legend",{children:"Only a part of the song"}),_("p",{children:[_("label",{children:["Section ",_("select",{value:s,onChange:c=>r(c.currentTarget.value),children:[_("option",{value:""}),i.map(c=>_("option",{value:c.name,children:c.name},c.name))]})]}),_("button",{type:"button",disabled:!s,onClick:()=>l({section:s}),children:"Draft this section"}),t&&_("button",{type:"button",disabled:!s,onClick:()=>l({section:s,another:!0}),children:"Another one for it"})]}),e?_("p",{children:[_("span",{children:["The empty stretch at the chosen count, ",e.from," to ",e.until]})," ",_("button",{type:"button",onClick:()=>l({span:[e.from,e.until]}),children:"Draft this stretch"})]}):_("p",{class:"quiet",children:"Or choose an empty count in the sheet: then the stretch around it can be drafted."})]}),_(t_,{}),_("p",{class:"row",children:_("label",{children:["Seed ",_("input",{type:"number",min:0,step:1,value:o,"aria-describedby":"seed-why",onInput:c=>a(Math.max(0,Math.round(Number(c.currentTarget.value)||0)))})]})}),_("p",{class:"quiet",id:"seed-why",children:"The same seed gives the same routine; another one decides otherwise where it costs little."})]})}function t_(){let n=wt.value?.values?.cast??[];return _("fieldset",{children:[_("legend",{children:"What everybody can dance"}),n.map(t=>_("p",{children:[_("label",{children:[t.name," ",_("select",{value:String(t.level??""),onChange:e=>{ie({do:"change-person",group:"cast",name:t.name,values:{level:e.currentTarget.value?Number(e.currentTarget.value):null}},`${t.name}: level ${e.currentTarget.value||"not said"}.`)},children:[_("option",{value:"",children:t.repertoire?"only what is listed":"level 3, as nothing is said"}),[1,2,3,4,5].map(e=>_("option",{value:e,children:e_[e]},e))]})]}),t.repertoire&&_("span",{class:"quiet",children:n_(t.repertoire)})]},t.name)),_("p",{class:"row",children:[_("button",{type:"button",onClick:()=>Hu("Cast"),children:"Moves known, learnt, never danced"}),_("button",{type:"button",onClick:()=>Hu("Wishes for drafts"),children:"Wishes"})]})]})}var e_=["","level 1: first moves","level 2: easy","level 3: middling","level 4: hard","level 5: everything"];function n_(n){return Object.entries(n).map(([t,e])=>`${t}: ${[e].flat().join(", ")}`).join("; ")}function Hu(n,t=50){ue.value="forms",setTimeout(()=>{let i=[...document.querySelectorAll(".forms > details > summary")].find(s=>s.textContent===n);if(!i){t>0&&ue.value==="forms"&&Hu(n,t-1);return}i.parentElement.open=!0,i.scrollIntoView({block:"start"}),i.focus()},60)}function i_(){return(wt.value?.values?.timeline??[]).some(t=>t&&"drafted"in t)}function Xd(n){let t=Wt.value,e=Ce.value;if(!t||!e)return null;let i=t.blocks.filter(a=>a.path!==null);if(i.some(a=>a.start<n+1-1e-6&&a.end>n+1e-6))return null;let s=Math.floor(e.beatAt(t.duration)+1e-6),r=Math.ceil(Math.max(0,...i.map(a=>a.end).filter(a=>a<=n+1e-6))-1e-6),o=Math.floor(Math.min(s,...i.map(a=>a.start).filter(a=>a>n+1e-6))+1e-6);return o-r<j0?null:{from:xn(e,r),until:xn(e,o)}}function qd({beat:n}){let t=Xd(n);return t?_("button",{type:"button",onClick:()=>{ue.value="draft",Un.value=!1,za.value=!0,cn("draft",{span:[t.from,t.until]})},children:["Draft ",t.from," to ",t.until]}):null}function Yd(){if(!Wt.value||Wt.value.blocks.length||!wt.value?.readable)return null;let n=()=>{ue.value="draft",za.value=!0,cn("draft",{})};return _("div",{class:"first",children:[_("p",{children:"Nothing is danced yet. Click a count, or walk there with the arrow keys and press Enter, to put a move there; or let a routine be drafted for the whole song."}),fs.value?.state!=="working"&&_("button",{type:"button",class:"main",onClick:n,children:"Draft a first routine"})]})}function s_({now:n}){return _(ne,{children:[_("h3",{tabIndex:-1,children:["Drafting",$d(n)]}),_(Kr,{now:n}),_("p",{class:"row",children:[_("button",{type:"button",disabled:n.stopping,onClick:()=>{cn("draft/stop",{keep:!0})},children:n.stopping?"Stopping \u2026":"Stop, and show the best so far"}),_("button",{type:"button",onClick:()=>{cn("draft/stop")},children:"Give it up"})]}),_("p",{class:"quiet",children:"You can go on planning meanwhile. What you change then is put together with the draft, where both touch different places."})]})}function Kr({now:n}){let[t,e]=It(n.seconds);return xe(()=>{e(n.seconds);let i=setInterval(()=>e(s=>s+1),1e3);return()=>clearInterval(i)},[n.seconds]),_("p",{class:"progressing",children:[_("progress",{max:1,value:n.share,"aria-label":n.words}),_("span",{children:[Math.round(100*n.share)," %, ",Hd(t)]}),_("span",{class:"quiet",children:[n.words," \u2026"]})]})}var $d=n=>n.asked.section?` ${n.asked.section}`:n.asked.span?` ${n.asked.span.join(" to ")}`:"",Ws=n=>n?`${n[0].toUpperCase()}${n.slice(1)}${/[.!?]$/.test(n)?"":"."}`:"";function r_({now:n}){let t=n.offer,e=async()=>{await ni(()=>je("draft/lay",{number:n.number}),"The draft is in the show.")&&(ue.value="findings")},{section:i,span:s}=n.asked,r=()=>{cn("draft",{section:i,span:s,another:!0,seed:n.asked.seed})},o=new Map;for(let a of t.rows)o.set(a.section,[...o.get(a.section)??[],a]);return _(ne,{children:[_("h3",{tabIndex:-1,children:["This could be danced",$d(n)]}),t.words.map((a,l)=>_("p",{class:/^(NOT checked|cannot be flown|left out)/.test(a)?"caution":l?"quiet":"",children:Ws(o_(a))},l)),!t.new&&_("p",{class:"caution",children:"It is what stands in the show already."}),n.older&&_("p",{class:"caution",children:"The show has been changed since this was begun. Both changes are put together where they touch different places; else you are told."}),_("p",{class:"row",children:[_("button",{type:"button",class:"main",disabled:!t.new,onClick:()=>{e()},children:"Put it into the show"}),_("button",{type:"button",onClick:r,children:"Another one"}),_("button",{type:"button",onClick:()=>{cn("draft/stop")},children:"Leave it"})]}),_("div",{class:"offered",children:[...o].map(([a,l])=>_("section",{"aria-label":a,children:[_("h4",{children:a}),_("ol",{children:l.map(c=>_("li",{children:[_("b",{children:c.position})," ",_("span",{children:c.words})]},c.position))})]},a))}),t.why.length>0&&_("details",{children:[_("summary",{children:"What it costs, and why"}),_("pre",{tabIndex:0,children:t.why.join(`
`)})]}),t.lines.length>0&&_("details",{children:[_("summary",{children:"What changes in the file"}),_("pre",{tabIndex:0,children:t.lines.map(a=>[...a.out.map(l=>`\u2212 ${l}`),...a.in.map(l=>`+ ${l}`)].join(`
`)).join(`
\u2026
`)})]})]})}function o_(n){return n.replace(": run `sequencer check` before you rely on it",": the checks look at it once it is in the show").replace(": `sequencer check --mend` mends it as far as it goes",": Findings offers mends once it is in the show")}var Xs=Zt(null),a_=["","1: first moves","2: easy","3: middling","4: hard","5: everything"];async function jr(){Xs.value=await me("begin")}function Jd(n){if(Xs.value?.state==="working"&&n.state==="working"){Xs.value={...Xs.value,...n};return}n.state==="done"?l_(n.number):jr().catch(()=>{})}async function l_(n){try{Gs(await je("begin/take",{number:n})),ue.value="draft"}catch(t){Gs(await me("show")),wt.value?.text.trim()||(nn.value={words:t.message,anyway:null})}me("patterns").then(t=>ks.value=t.patterns,()=>{})}function Kd(){let n=Xs.value;xe(()=>{jr().catch(()=>{})},[]);let[t,e]=It(null),[i,s]=It(null),[r,o]=It([{name:"",stature:"1.70 m",prop:"poi",level:2}]),[a,l]=It(null),c=ge(null),u=ge(null);if(Jr(u,n?.state),!n||!wt.value)return _("main",{class:"opening",children:_("p",{children:"Looking for songs \u2026"})});let f=i??n.track??n.songs[0]??"",d=a??[`${Math.max(8,4*r.length)} m`,"8 m"],h=(g,p)=>o(r.map((v,M)=>M===g?{...v,...p}:v)),m=()=>{o([...r,{...r[r.length-1],name:""}]),setTimeout(()=>[...c.current?.querySelectorAll("input.name")??[]].pop()?.focus())},y=async()=>{await cn("begin",{title:t??n.title,track:f,cast:r,floor:d})&&await jr()};return n.state==="working"||n.state==="done"?_(ne,{children:[_(Zd,{}),_("main",{class:"beginning",children:_("div",{ref:u,class:"hearing",children:[_("h2",{tabIndex:-1,children:"Hearing the song"}),_("p",{children:"Beats, bars and sections are found. That takes a while, once for each song."}),_(Kr,{now:n}),_("p",{class:"row",children:_("button",{type:"button",onClick:()=>{cn("begin/stop").then(jr)},children:"Give it up"})})]})})]}):_(ne,{children:[_(Zd,{}),_("main",{class:"beginning",children:_("form",{onSubmit:g=>{g.preventDefault(),y()},children:[_("p",{children:"Say which song it is and who dances. All of this can be changed later."}),n.state==="failed"&&_("p",{class:"fault",role:"alert",children:Ws(n.error?[n.error.what,n.error.mend].filter(Boolean).join("; "):"")}),_("p",{class:"field",children:[_("label",{for:"new-title",children:"Title"}),_("input",{id:"new-title",type:"text",value:t??n.title,onInput:g=>e(g.currentTarget.value)})]}),_(jd,{songs:n.songs,value:f,choose:s}),_("fieldset",{ref:c,class:"dancers",children:[_("legend",{children:"Who dances"}),r.map((g,p)=>_("div",{class:"dancer",role:"group","aria-label":g.name||`Performer ${p+1}`,children:[_("label",{children:["Name ",_("input",{class:"name",type:"text",required:!0,value:g.name,onInput:v=>h(p,{name:v.currentTarget.value})})]}),_("label",{children:["Stature ",_("input",{type:"text",required:!0,value:g.stature,size:7,onInput:v=>h(p,{stature:v.currentTarget.value})})]}),_("label",{children:["Prop ",_("select",{value:g.prop,onChange:v=>h(p,{prop:v.currentTarget.value}),children:n.props.map(v=>_("option",{value:v,children:v},v))})]}),_("label",{children:["Level ",_("select",{value:String(g.level),onChange:v=>h(p,{level:Number(v.currentTarget.value)}),children:[1,2,3,4,5].map(v=>_("option",{value:v,children:a_[v]},v))})]}),r.length>1&&_("button",{type:"button","aria-label":`Take out ${g.name||`performer ${p+1}`}`,onClick:()=>o(r.filter((v,M)=>M!==p)),children:"Take out"})]},p)),_("p",{class:"row",children:_("button",{type:"button",onClick:m,children:"Add somebody"})}),_("p",{class:"quiet",children:"Stature is body height, as you say it: 1.70 m, 170 cm or 5 ft 7 in. The level says which moves a draft may use."})]}),_("fieldset",{children:[_("legend",{children:"The floor"}),_("label",{children:["Width ",_("input",{type:"text",size:6,value:d[0],onInput:g=>l([g.currentTarget.value,d[1]])})]}),_("label",{children:["Depth ",_("input",{type:"text",size:6,value:d[1],onInput:g=>l([d[0],g.currentTarget.value])})]})]}),_("p",{class:"row",children:_("button",{type:"submit",class:"main",disabled:!f.trim(),children:"Make the show"})})]})})]})}var Zd=()=>_("header",{class:"top",children:[_("h1",{children:"A new show"}),_("p",{class:"file",children:["becomes ",wt.value.file," in ",wt.value.folder]})]});function jd({songs:n,value:t,choose:e}){let[i,s]=It(""),r=async o=>{if(o){s(`${o.name} is being put beside the show \u2026`);try{let{file:a}=await dd(o);e(a),s(`${a} lies beside the show now.`)}catch(a){s(a instanceof Ke||!(a instanceof TypeError)?a.message:"The program behind this page does not answer.")}}};return _("fieldset",{class:"song",children:[_("legend",{children:"The song"}),n.length>0&&_("p",{children:_("label",{children:["Beside the show ",_("select",{value:n.includes(t)?t:"",onChange:o=>o.currentTarget.value&&e(o.currentTarget.value),children:[!n.includes(t)&&_("option",{value:""}),n.map(o=>_("option",{value:o,children:o},o))]})]})}),_("p",{children:_("label",{children:["Its path ",_("input",{type:"text",value:t,placeholder:"my-song.mp3",onInput:o=>e(o.currentTarget.value)})]})}),_("p",{children:_("label",{children:["Or bring one from elsewhere ",_("input",{type:"file",accept:"audio/*,.wav,.flac,.ogg,.mp3",onChange:o=>{r(o.currentTarget.files?.[0])}})]})}),i&&_("p",{class:"quiet",role:"status",children:i})]})}function Wu({cut:n=!1}){let t=Xs.value,[e,i]=It(null);xe(()=>{jr().catch(()=>{})},[wt.value?.revision]);let s=wt.value?.values?.track?.file??"",r=e??s,o=(a=!1)=>ni(()=>je("track",{file:r,revision:wt.value.revision,anyway:a}),`${r} is the song now.`,()=>{o(!0)}).then(l=>l&&i(null));return _("form",{class:"song-file",onSubmit:a=>{a.preventDefault(),o()},children:[_(jd,{songs:t?.songs??[],value:r,choose:i}),_("p",{class:"row",children:_("button",{type:"submit",disabled:!r.trim()||r===s&&!n,children:"Take this song"})})]})}function Qd(){let n=Bs.value?.error?.code==="another-cut",t=wt.value?.track_there===!1;return!n&&!t?null:_("div",{class:"first",children:[_("p",{children:t?"The song of this show is not where the file says. Say where it is, or take another one.":"The song is not the cut that this show was made for. Put the old file back, or take the new one: then every move is on its count in the new cut."}),_(Wu,{cut:n})]})}var qs=class{constructor(t){this.duration=t}duration;silent=!0;anchor=0;started=null;rate=1;span=null;volume=1;get playing(){return this.started!==null}now(){if(this.started===null)return this.anchor;let t=this.anchor+(performance.now()-this.started)/1e3*this.rate;if(this.span&&t>=this.span[1]){let[e,i]=this.span;return this.anchor=e+(t-i)%(i-e),this.started=performance.now(),this.anchor}return t<this.duration?t:(this.anchor=this.duration,this.started=null,this.duration)}async play(){this.now()>=this.duration&&(this.anchor=0),this.started??=performance.now()}pause(){this.anchor=this.now(),this.started=null}loop(t){this.span=t}seek(t){this.anchor=Math.min(Math.max(t,0),this.duration),this.started!==null&&(this.started=performance.now())}get speed(){return this.rate}set speed(t){let e=this.now();this.rate=t,this.seek(e)}};var Fn=Uint8Array,Ys=Uint16Array,c_=Int32Array,tp=new Fn([0,0,0,0,0,0,0,0,1,1,1,1,2,2,2,2,3,3,3,3,4,4,4,4,5,5,5,5,0,0,0,0]),ep=new Fn([0,0,0,0,1,1,2,2,3,3,4,4,5,5,6,6,7,7,8,8,9,9,10,10,11,11,12,12,13,13,0,0]),u_=new Fn([16,17,18,0,8,7,9,6,10,5,11,4,12,3,13,2,14,1,15]),np=function(n,t){for(var e=new Ys(31),i=0;i<31;++i)e[i]=t+=1<<n[i-1];for(var s=new c_(e[30]),i=1;i<30;++i)for(var r=e[i];r<e[i+1];++r)s[r]=r-e[i]<<5|i;return{b:e,r:s}},ip=np(tp,2),sp=ip.b,h_=ip.r;sp[28]=258,h_[258]=28;var rp=np(ep,0),f_=rp.b,oT=rp.r,Yu=new Ys(32768);for(se=0;se<32768;++se)gi=(se&43690)>>1|(se&21845)<<1,gi=(gi&52428)>>2|(gi&13107)<<2,gi=(gi&61680)>>4|(gi&3855)<<4,Yu[se]=((gi&65280)>>8|(gi&255)<<8)>>1;var gi,se,Qr=(function(n,t,e){for(var i=n.length,s=0,r=new Ys(t);s<i;++s)n[s]&&++r[n[s]-1];var o=new Ys(t);for(s=1;s<t;++s)o[s]=o[s-1]+r[s-1]<<1;var a;if(e){a=new Ys(1<<t);var l=15-t;for(s=0;s<i;++s)if(n[s])for(var c=s<<4|n[s],u=t-n[s],f=o[n[s]-1]++<<u,d=f|(1<<u)-1;f<=d;++f)a[Yu[f]>>l]=c}else for(a=new Ys(i),s=0;s<i;++s)n[s]&&(a[s]=Yu[o[n[s]-1]++]>>15-n[s]);return a}),to=new Fn(288);for(se=0;se<144;++se)to[se]=8;var se;for(se=144;se<256;++se)to[se]=9;var se;for(se=256;se<280;++se)to[se]=7;var se;for(se=280;se<288;++se)to[se]=8;var se,op=new Fn(32);for(se=0;se<32;++se)op[se]=5;var se;var d_=Qr(to,9,1);var p_=Qr(op,5,1),Xu=function(n){for(var t=n[0],e=1;e<n.length;++e)n[e]>t&&(t=n[e]);return t},Xn=function(n,t,e){var i=t/8|0;return(n[i]|n[i+1]<<8)>>(t&7)&e},qu=function(n,t){var e=t/8|0;return(n[e]|n[e+1]<<8|n[e+2]<<16)>>(t&7)},m_=function(n){return(n+7)/8|0},g_=function(n,t,e){return(t==null||t<0)&&(t=0),(e==null||e>n.length)&&(e=n.length),new Fn(n.subarray(t,e))};var __=["unexpected EOF","invalid block type","invalid length/literal","invalid distance","stream finished","no stream handler",,"no callback","invalid UTF-8 data","extra field too long","date not in range 1980-2099","filename too long","stream finishing","invalid zip data"],_i=function(n,t,e){var i=new Error(t||__[n]);if(i.code=n,Error.captureStackTrace&&Error.captureStackTrace(i,_i),!e)throw i;return i},v_=function(n,t,e,i){var s=n.length,r=i?i.length:0;if(!s||t.f&&!t.l)return e||new Fn(0);var o=!e,a=o||t.i!=2,l=t.i;o&&(e=new Fn(s*3));var c=function(Pt){var te=e.length;if(Pt>te){var oe=new Fn(Math.max(te*2,Pt));oe.set(e),e=oe}},u=t.f||0,f=t.p||0,d=t.b||0,h=t.l,m=t.d,y=t.m,g=t.n,p=s*8;do{if(!h){u=Xn(n,f,1);var v=Xn(n,f+1,3);if(f+=3,v)if(v==1)h=d_,m=p_,y=9,g=5;else if(v==2){var A=Xn(n,f,31)+257,x=Xn(n,f+10,15)+4,T=A+Xn(n,f+5,31)+1;f+=14;for(var D=new Fn(T),R=new Fn(19),P=0;P<x;++P)R[u_[P]]=Xn(n,f+P*3,7);f+=x*3;for(var F=Xu(R),k=(1<<F)-1,I=Qr(R,F,1),P=0;P<T;){var W=I[Xn(n,f,k)];f+=W&15;var M=W>>4;if(M<16)D[P++]=M;else{var X=0,B=0;for(M==16?(B=3+Xn(n,f,3),f+=2,X=D[P-1]):M==17?(B=3+Xn(n,f,7),f+=3):M==18&&(B=11+Xn(n,f,127),f+=7);B--;)D[P++]=X}}var Q=D.subarray(0,A),G=D.subarray(A);y=Xu(Q),g=Xu(G),h=Qr(Q,y,1),m=Qr(G,g,1)}else _i(1);else{var M=m_(f)+4,b=n[M-4]|n[M-3]<<8,E=M+b;if(E>s){l&&_i(0);break}a&&c(d+b),e.set(n.subarray(M,E),d),t.b=d+=b,t.p=f=E*8,t.f=u;continue}if(f>p){l&&_i(0);break}}a&&c(d+131072);for(var tt=(1<<y)-1,et=(1<<g)-1,xt=f;;xt=f){var X=h[qu(n,f)&tt],Dt=X>>4;if(f+=X&15,f>p){l&&_i(0);break}if(X||_i(2),Dt<256)e[d++]=Dt;else if(Dt==256){xt=f,h=null;break}else{var Z=Dt-254;if(Dt>264){var P=Dt-257,dt=tp[P];Z=Xn(n,f,(1<<dt)-1)+sp[P],f+=dt}var yt=m[qu(n,f)&et],Et=yt>>4;yt||_i(3),f+=yt&15;var G=f_[Et];if(Et>3){var dt=ep[Et];G+=qu(n,f)&(1<<dt)-1,f+=dt}if(f>p){l&&_i(0);break}a&&c(d+131072);var mt=d+Z;if(d<G){var Ut=r-G,Ee=Math.min(G,mt);for(Ut+d<0&&_i(3);d<Ee;++d)e[d]=i[Ut+d]}for(;d<mt;++d)e[d]=e[d-G]}}t.l=h,t.p=xt,t.b=d,t.f=u,h&&(u=1,t.m=y,t.d=m,t.n=g)}while(!u);return d!=e.length&&o?g_(e,0,d):e.subarray(0,d)};var y_=new Fn(0);function ap(n,t){return v_(n,{i:2},t&&t.out,t&&t.dictionary)}var x_=typeof TextDecoder<"u"&&new TextDecoder,b_=0;try{x_.decode(y_,{stream:!0}),b_=1}catch{}var Va=class{constructor(t,e){this.head=t;this.samples=e;this.channels=t.steps.length,this.offsets=new Int32Array(t.intervals.length);let i=0;t.intervals.forEach((s,r)=>{this.offsets[r]=i,i+=this.channels*(s+2+3+1)})}head;samples;offsets;channels;read(t,e,i=this.channels){let{head:s,samples:r}=this,o=(t-s.start)/8,a=Math.min(Math.max(Math.floor(o),0),s.intervals.length-1),l=s.intervals[a],c=Math.min(Math.max(o-a,0),1)*l,u=Math.min(Math.floor(c),l-1),f=c-u,d=f+2,h=f+1,m=f-1,y=f-2,g=f-3,p=-h*f*m*y*g/120,v=d*f*m*y*g/24,M=-d*h*m*y*g/12,b=d*h*f*y*g/12,E=-d*h*f*m*g/24,A=d*h*f*m*y/120,x=l+2+3+1,T=this.offsets[a]+u;for(let D=0;D<i;D++,T+=x)e[D]=s.bases[D]+s.steps[D]*(p*r[T]+v*r[T+1]+M*r[T+2]+b*r[T+3]+E*r[T+4]+A*r[T+5])}};var ps=["left","right"];function M_(n){let t=atob(n.trim()),e=new Uint8Array(t.length);for(let i=0;i<t.length;i++)e[i]=t.charCodeAt(i);return e}function up(n){let t=ap(M_(n.keys)),e=t.length/2,i=0,s=o=>{let a=o.steps.length,l=0;for(let f of o.intervals)l+=a*(f+2+3+1);let c=new Int16Array(l),u=0;for(let f of o.intervals){let d=f+2+3+1;for(let h=0;h<a;h++){let m=0,y=0;for(let g=0;g<d;g++,i++){let p=t[i]|t[e+i]<<8,v=p>>>1^-(p&1);g===0?y=v:(m=g===1?v:m+v,y+=m),y=y<<16>>16,c[u++]=y}}}return new Va(o,c)},r=o=>{let a={floor:s(o.floor)};for(let l of ps){let c=o[l];c&&(a[l]=s(c))}return a};return n.cast.map(o=>{let a=r(o.tracks);return o.drawn&&(a.drawn=r(o.drawn)),a})}function hp(n,t,e){if(!n?.length)return void e.fill(0);let i=0;for(;i<n.length-1&&n[i+1][0]<=t;)i++;let s=n[Math.min(i+1,n.length-1)],r=s[0]-n[i][1],o=r>0?Math.min(Math.max((t-n[i][1])/r,0),1):0,a=o*o*o*(10-15*o+6*o*o);for(let l=0;l<5;l++)e[l]=n[i][l+2]+a*(s[l+2]-n[i][l+2])}function ms([n,t,e]){let i=Math.cos(n),s=Math.sin(n),r=Math.cos(t),o=Math.sin(t),a=Math.cos(e),l=Math.sin(e);return[i*a+s*o*l,-s*r,i*l-s*o*a,s*a-i*o*l,i*r,s*l+i*o*a,-r*l,-o,r*a]}function fp(n){return S_(ms(n),ms([0,n[3],n[4],0,0]))}function S_(n,t){return Array.from({length:9},(e,i)=>{let s=i-i%3,r=i%3;return n[s]*t[r]+n[s+1]*t[r+3]+n[s+2]*t[r+6]})}function Zu(n,t,e,i,s){return s[0]=n[0]*t+n[1]*e+n[2]*i,s[1]=n[3]*t+n[4]*e+n[5]*i,s[2]=n[6]*t+n[7]*e+n[8]*i,s}function gs(n,t,e,i){return Zu(ms(t),e[0],e[1],e[2]-n.hips,i),i[2]+=n.hips,i}function $s(n,t,e,i){return Zu(ms([0,t[3],t[4],0,0]),e[0],e[1],e[2]-n.shoulder,i),i[2]+=n.shoulder,gs(n,t,[...i],i)}function w_(n,t,e,i){return gs(n,t,[e==="left"?-n.halfShoulder:n.halfShoulder,0,n.shoulder],i)}function dp(n,t,e,i){let s=w_(n,t,e,[0,0,0]),r=ms(t),o=[i[0]-s[0],i[1]-s[1],i[2]-s[2]],a=[0,1,2].map(M=>r[M]*o[0]+r[M+3]*o[1]+r[M+6]*o[2]),l=$u(a,a)-n.arm**2;if(l<=0)return[0,0,0];let[c,u,f,d]=n.give,h=e==="left"?-1:1,y=[Math.min(Math.max(h*a[0],-c),0)*h,Math.min(Math.max(a[1],-u),f),Math.min(Math.max(a[2],0),d)],g=$u(y,y),p=$u(y,a),v=g>0?Math.min(Math.max((p-Math.sqrt(Math.max(p*p-g*l,0)))/g,0),1):0;return Zu(r,v*y[0],v*y[1],v*y[2],[0,0,0])}function $u(n,t){return n[0]*t[0]+n[1]*t[1]+n[2]*t[2]}function Ku(){let n=()=>({left:[0,0,0],right:[0,0,0]});return{x:0,y:0,cos:1,sin:0,hand:n(),tether:n(),across:n(),plane:n(),bodyHand:n(),bodyPlane:n(),angles:[0,0,0,0,0]}}var he=new Float64Array(9),eo=[0,0,0],Ju=[0,0,0];function Ga(n,t,e,i){let s=Math.hypot(n,t,e)||1;return i[0]=n/s,i[1]=t/s,i[2]=e/s,i}function pp(n,t){return[n[1]*t[2]-n[2]*t[1],n[2]*t[0]-n[0]*t[2],n[0]*t[1]-n[1]*t[0]]}function Wa(n,t,e,i){let s=n.hand[t],r=n.tether[t],o=n.across[t];for(let a=0;a<3;a++)i[a]=s[a]+e[0]*r[a]+e[1]*o[a];return i}function Xa(n){return n.heads.slice(0,n.kind==="staff"?2:1)}var Ha=class{constructor(t,e){this.entry=t;this.own=e}entry;own;drawn=!1;get tracks(){return this.drawn&&this.own.drawn||this.own}stand(t,e){this.tracks.floor.read(t,he);let i=Math.hypot(he[2],he[3]);e.x=he[0],e.y=he[1],e.cos=he[2]/i,e.sin=he[3]/i}turn(t,e,i){let s=e[0],r=e[1];i[0]=-t.cos*s+t.sin*r,i[1]=-t.sin*s-t.cos*r,i[2]=e[2]}toStage(t,e,i){this.turn(t,e,i),i[0]+=t.x,i[1]+=t.y}at(t,e){this.stand(t,e),hp(this.entry.carriage,t,e.angles);for(let i of ps){let s=this.tracks[i],r=this.entry.props[i];if(!s||!r)continue;s.read(t,he);let o=e.bodyHand[i];o[0]=he[0],o[1]=he[1],o[2]=he[2],this.turn(e,Ga(he[3],he[4],he[5],eo),e.tether[i]);let a=Math.hypot(he[6],he[7],he[8])||1,l=e.bodyPlane[i];l[0]=he[6]/a,l[1]=he[7]/a,l[2]=he[8]/a,this.turn(e,l,e.plane[i]),this.toStage(e,o,e.hand[i]),this.turn(e,Ga(...pp(l,eo),Ju),e.across[i])}}headAt(t,e,i,s,r){let o=this.tracks[e];if(o){this.stand(t,i),o.read(t,he,r[1]===0?6:9),Ga(he[3],he[4],he[5],eo),r[1]!==0&&Ga(...pp([he[6],he[7],he[8]],eo),Ju);for(let a=0;a<3;a++)s[a]=he[a]+r[0]*eo[a]+(r[1]&&r[1]*Ju[a]);this.toStage(i,s,s)}}};var Ki={LEFT:0,MIDDLE:1,RIGHT:2,ROTATE:0,DOLLY:1,PAN:2},ji={ROTATE:0,PAN:1,DOLLY_PAN:2,DOLLY_ROTATE:3},tm=0,Lh=1,em=2;var Zo=1,nm=2,wr=3,Qi=0,fn=1,on=2,ws=0,Tr=1,ts=2,Nh=3,Uh=4,im=5;var Ts=100,sm=101,rm=102,om=103,am=104,lm=200,cm=201,um=202,hm=203,Fh=204,Oh=205,fm=206,dm=207,pm=208,mm=209,gm=210,_m=211,vm=212,ym=213,xm=214,bl=0,Ml=1,Sl=2,hr=3,wl=4,Tl=5,Al=6,El=7,rc=0,bm=1,Mm=2,ui=0,Bh=1,kh=2,zh=3,Vh=4,Gh=5,Hh=6,Wh=7;var Xh=300,As=301,Ar=302,oc=303,ac=304,Cl=1e3,si=1001,Rl=1002,qe=1003,Sm=1004;var Jo=1005;var hn=1006,lc=1007;var Ci=1008;var gn=1009,qh=1010,Yh=1011,Er=1012,cc=1013,Jn=1014,kn=1015,Kn=1016,uc=1017,hc=1018,Es=1020,$h=35902,Zh=35899,Jh=1021,Kh=1022,jn=1023,wi=1026,Ri=1027,fc=1028,dc=1029,es=1030,pc=1031;var mc=1033,Ko=33776,jo=33777,Qo=33778,ta=33779,gc=35840,_c=35841,vc=35842,yc=35843,xc=36196,bc=37492,Mc=37496,Sc=37488,wc=37489,ea=37490,Tc=37491,Ac=37808,Ec=37809,Cc=37810,Rc=37811,Pc=37812,Ic=37813,Dc=37814,Lc=37815,Nc=37816,Uc=37817,Fc=37818,Oc=37819,Bc=37820,kc=37821,zc=36492,Vc=36494,Gc=36495,Hc=36283,Wc=36284,na=36285,Xc=36286;var go=2300,Pl=2301,yl=2302,Mh=2303,Sh=2400,wh=2401,Th=2402;var wm=3200;var qc=0,Tm=1,Pi="",wn="srgb",_o="srgb-linear",vo="linear",ae="srgb";var xl=7680;var Am=519,Em=512,Cm=513,Rm=514,jh=515,Pm=516,Im=517,Qh=518,tf=519,Dm=35044,ns=35048;var ef="300 es",Bn=2e3,fr=2001;function T_(n){for(let t=n.length-1;t>=0;--t)if(n[t]>=65535)return!0;return!1}function A_(n){return ArrayBuffer.isView(n)&&!(n instanceof DataView)}function yo(n){return document.createElementNS("http://www.w3.org/1999/xhtml",n)}function Lm(){let n=yo("canvas");return n.style.display="block",n}var mp={},dr=null;function nf(...n){let t="THREE."+n.shift();dr?dr("log",t,...n):console.log(t,...n)}function Nm(n){let t=n[0];if(typeof t=="string"&&t.startsWith("TSL:")){let e=n[1];e&&e.isStackTrace?n[0]+=" "+e.getLocation():n[1]='Stack trace not available. Enable "THREE.Node.captureStackTrace" to capture stack traces.'}return n}function Rt(...n){n=Nm(n);let t="THREE."+n.shift();if(dr)dr("warn",t,...n);else{let e=n[0];e&&e.isStackTrace?console.warn(e.getError(t)):console.warn(t,...n)}}function Nt(...n){n=Nm(n);let t="THREE."+n.shift();if(dr)dr("error",t,...n);else{let e=n[0];e&&e.isStackTrace?console.error(e.getError(t)):console.error(t,...n)}}function uo(...n){let t=n.join(" ");t in mp||(mp[t]=!0,Rt(...n))}function Um(n,t,e){return new Promise(function(i,s){function r(){switch(n.clientWaitSync(t,n.SYNC_FLUSH_COMMANDS_BIT,0)){case n.WAIT_FAILED:s();break;case n.TIMEOUT_EXPIRED:setTimeout(r,e);break;default:i()}}setTimeout(r,e)})}var Fm={[bl]:bl,[Sl]:Al,[wl]:wl,[hr]:Tl,[Ml]:Ml,[Al]:Sl,[El]:El,[Tl]:hr},Zn=class{addEventListener(t,e){this._listeners===void 0&&(this._listeners={});let i=this._listeners;i[t]===void 0&&(i[t]=[]),i[t].indexOf(e)===-1&&i[t].push(e)}hasEventListener(t,e){let i=this._listeners;return i===void 0?!1:i[t]!==void 0&&i[t].indexOf(e)!==-1}removeEventListener(t,e){let i=this._listeners;if(i===void 0)return;let s=i[t];if(s!==void 0){let r=s.indexOf(e);r!==-1&&s.splice(r,1)}}dispatchEvent(t){let e=this._listeners;if(e===void 0)return;let i=e[t.type];if(i!==void 0){t.target=this;let s=i.slice(0);for(let r=0,o=s.length;r<o;r++)s[r].call(this,t);t.target=null}}},sn=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"],gp=1234567,ho=Math.PI/180,pr=180/Math.PI;function Cs(){let n=Math.random()*4294967295|0,t=Math.random()*4294967295|0,e=Math.random()*4294967295|0,i=Math.random()*4294967295|0;return(sn[n&255]+sn[n>>8&255]+sn[n>>16&255]+sn[n>>24&255]+"-"+sn[t&255]+sn[t>>8&255]+"-"+sn[t>>16&15|64]+sn[t>>24&255]+"-"+sn[e&63|128]+sn[e>>8&255]+"-"+sn[e>>16&255]+sn[e>>24&255]+sn[i&255]+sn[i>>8&255]+sn[i>>16&255]+sn[i>>24&255]).toLowerCase()}function Vt(n,t,e){return Math.max(t,Math.min(e,n))}function sf(n,t){return(n%t+t)%t}function E_(n,t,e,i,s){return i+(n-t)*(s-i)/(e-t)}function C_(n,t,e){return n!==t?(e-n)/(t-n):0}function fo(n,t,e){return(1-e)*n+e*t}function R_(n,t,e,i){return fo(n,t,1-Math.exp(-e*i))}function P_(n,t=1){return t-Math.abs(sf(n,t*2)-t)}function I_(n,t,e){return n<=t?0:n>=e?1:(n=(n-t)/(e-t),n*n*(3-2*n))}function D_(n,t,e){return n<=t?0:n>=e?1:(n=(n-t)/(e-t),n*n*n*(n*(n*6-15)+10))}function L_(n,t){return n+Math.floor(Math.random()*(t-n+1))}function N_(n,t){return n+Math.random()*(t-n)}function U_(n){return n*(.5-Math.random())}function F_(n){n!==void 0&&(gp=n);let t=gp+=1831565813;return t=Math.imul(t^t>>>15,t|1),t^=t+Math.imul(t^t>>>7,t|61),((t^t>>>14)>>>0)/4294967296}function O_(n){return n*ho}function B_(n){return n*pr}function k_(n){return n>0&&Number.isInteger(n)&&2**Math.round(Math.log2(n))===n}function z_(n){return Math.pow(2,Math.ceil(Math.log(n)/Math.LN2))}function rf(n){return Math.pow(2,Math.floor(Math.log(n)/Math.LN2))}function V_(n,t,e,i,s){let r=Math.cos,o=Math.sin,a=r(e/2),l=o(e/2),c=r((t+i)/2),u=o((t+i)/2),f=r((t-i)/2),d=o((t-i)/2),h=r((i-t)/2),m=o((i-t)/2);switch(s){case"XYX":n.set(a*u,l*f,l*d,a*c);break;case"YZY":n.set(l*d,a*u,l*f,a*c);break;case"ZXZ":n.set(l*f,l*d,a*u,a*c);break;case"XZX":n.set(a*u,l*m,l*h,a*c);break;case"YXY":n.set(l*h,a*u,l*m,a*c);break;case"ZYZ":n.set(l*m,l*h,a*u,a*c);break;default:Rt("MathUtils: .setQuaternionFromProperEuler() encountered an unknown order: "+s)}}function of(n){switch(n.constructor){case Uint32Array:return 4294967295;case Uint16Array:return 65535;case Uint8Array:case Uint8ClampedArray:return 255;case Int32Array:return 2147483647;case Int16Array:return 32767;case Int8Array:return 127;default:return}}function Om(n,t){if(t.constructor===Float32Array)return n;let e=of(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.max(n/e,-1)}function Bm(n,t){if(t.constructor===Float32Array)return n;let e=of(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.round(n*e)}var Yc={DEG2RAD:ho,RAD2DEG:pr,generateUUID:Cs,clamp:Vt,euclideanModulo:sf,mapLinear:E_,inverseLerp:C_,lerp:fo,damp:R_,pingpong:P_,smoothstep:I_,smootherstep:D_,randInt:L_,randFloat:N_,randFloatSpread:U_,seededRandom:F_,degToRad:O_,radToDeg:B_,isPowerOfTwo:k_,ceilPowerOfTwo:z_,floorPowerOfTwo:rf,setQuaternionFromProperEuler:V_,normalize:Bm,denormalize:Om},rt=class{static{this.prototype.isVector2=!0}constructor(t=0,e=0){this.x=t,this.y=e}get width(){return this.x}set width(t){this.x=t}get height(){return this.y}set height(t){this.y=t}set(t,e){return this.x=t,this.y=e,this}setScalar(t){return this.x=t,this.y=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;default:throw new Error("THREE.Vector2: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;default:throw new Error("THREE.Vector2: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y)}copy(t){return this.x=t.x,this.y=t.y,this}add(t){return this.x+=t.x,this.y+=t.y,this}addScalar(t){return this.x+=t,this.y+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this}subScalar(t){return this.x-=t,this.y-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this}multiply(t){return this.x*=t.x,this.y*=t.y,this}multiplyScalar(t){return this.x*=t,this.y*=t,this}divide(t){return this.x/=t.x,this.y/=t.y,this}divideScalar(t){return this.multiplyScalar(1/t)}applyMatrix3(t){let e=this.x,i=this.y,s=t.elements;return this.x=s[0]*e+s[3]*i+s[6],this.y=s[1]*e+s[4]*i+s[7],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this}clamp(t,e){return this.x=Vt(this.x,t.x,e.x),this.y=Vt(this.y,t.y,e.y),this}clampScalar(t,e){return this.x=Vt(this.x,t,e),this.y=Vt(this.y,t,e),this}clampLength(t,e){let i=this.length();return this.divideScalar(i||1).multiplyScalar(Vt(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(t){return this.x*t.x+this.y*t.y}cross(t){return this.x*t.y-this.y*t.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let i=this.dot(t)/e;return Math.acos(Vt(i,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,i=this.y-t.y;return e*e+i*i}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this}equals(t){return t.x===this.x&&t.y===this.y}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this}rotateAround(t,e){let i=Math.cos(e),s=Math.sin(e),r=this.x-t.x,o=this.y-t.y;return this.x=r*i-o*s+t.x,this.y=r*s+o*i+t.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}},Be=class{constructor(t=0,e=0,i=0,s=1){this.isQuaternion=!0,this._x=t,this._y=e,this._z=i,this._w=s}static slerpFlat(t,e,i,s,r,o,a){let l=i[s+0],c=i[s+1],u=i[s+2],f=i[s+3],d=r[o+0],h=r[o+1],m=r[o+2],y=r[o+3];if(f!==y||l!==d||c!==h||u!==m){let g=l*d+c*h+u*m+f*y;g<0&&(d=-d,h=-h,m=-m,y=-y,g=-g);let p=1-a;if(g<.9995){let v=Math.acos(g),M=Math.sin(v);p=Math.sin(p*v)/M,a=Math.sin(a*v)/M,l=l*p+d*a,c=c*p+h*a,u=u*p+m*a,f=f*p+y*a}else{l=l*p+d*a,c=c*p+h*a,u=u*p+m*a,f=f*p+y*a;let v=1/Math.sqrt(l*l+c*c+u*u+f*f);l*=v,c*=v,u*=v,f*=v}}t[e]=l,t[e+1]=c,t[e+2]=u,t[e+3]=f}static multiplyQuaternionsFlat(t,e,i,s,r,o){let a=i[s],l=i[s+1],c=i[s+2],u=i[s+3],f=r[o],d=r[o+1],h=r[o+2],m=r[o+3];return t[e]=a*m+u*f+l*h-c*d,t[e+1]=l*m+u*d+c*f-a*h,t[e+2]=c*m+u*h+a*d-l*f,t[e+3]=u*m-a*f-l*d-c*h,t}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get w(){return this._w}set w(t){this._w=t,this._onChangeCallback()}set(t,e,i,s){return this._x=t,this._y=e,this._z=i,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(t){return this._x=t.x,this._y=t.y,this._z=t.z,this._w=t.w,this._onChangeCallback(),this}setFromEuler(t,e=!0){let i=t._x,s=t._y,r=t._z,o=t._order,a=Math.cos,l=Math.sin,c=a(i/2),u=a(s/2),f=a(r/2),d=l(i/2),h=l(s/2),m=l(r/2);switch(o){case"XYZ":this._x=d*u*f+c*h*m,this._y=c*h*f-d*u*m,this._z=c*u*m+d*h*f,this._w=c*u*f-d*h*m;break;case"YXZ":this._x=d*u*f+c*h*m,this._y=c*h*f-d*u*m,this._z=c*u*m-d*h*f,this._w=c*u*f+d*h*m;break;case"ZXY":this._x=d*u*f-c*h*m,this._y=c*h*f+d*u*m,this._z=c*u*m+d*h*f,this._w=c*u*f-d*h*m;break;case"ZYX":this._x=d*u*f-c*h*m,this._y=c*h*f+d*u*m,this._z=c*u*m-d*h*f,this._w=c*u*f+d*h*m;break;case"YZX":this._x=d*u*f+c*h*m,this._y=c*h*f+d*u*m,this._z=c*u*m-d*h*f,this._w=c*u*f-d*h*m;break;case"XZY":this._x=d*u*f-c*h*m,this._y=c*h*f-d*u*m,this._z=c*u*m+d*h*f,this._w=c*u*f+d*h*m;break;default:Rt("Quaternion: .setFromEuler() encountered an unknown order: "+o)}return e===!0&&this._onChangeCallback(),this}setFromAxisAngle(t,e){let i=e/2,s=Math.sin(i);return this._x=t.x*s,this._y=t.y*s,this._z=t.z*s,this._w=Math.cos(i),this._onChangeCallback(),this}setFromRotationMatrix(t){let e=t.elements,i=e[0],s=e[4],r=e[8],o=e[1],a=e[5],l=e[9],c=e[2],u=e[6],f=e[10],d=i+a+f;if(d>0){let h=.5/Math.sqrt(d+1);this._w=.25/h,this._x=(u-l)*h,this._y=(r-c)*h,this._z=(o-s)*h}else if(i>a&&i>f){let h=2*Math.sqrt(1+i-a-f);this._w=(u-l)/h,this._x=.25*h,this._y=(s+o)/h,this._z=(r+c)/h}else if(a>f){let h=2*Math.sqrt(1+a-i-f);this._w=(r-c)/h,this._x=(s+o)/h,this._y=.25*h,this._z=(l+u)/h}else{let h=2*Math.sqrt(1+f-i-a);this._w=(o-s)/h,this._x=(r+c)/h,this._y=(l+u)/h,this._z=.25*h}return this._onChangeCallback(),this}setFromUnitVectors(t,e){let i=t.dot(e)+1;return i<1e-8?(i=0,Math.abs(t.x)>Math.abs(t.z)?(this._x=-t.y,this._y=t.x,this._z=0,this._w=i):(this._x=0,this._y=-t.z,this._z=t.y,this._w=i)):(this._x=t.y*e.z-t.z*e.y,this._y=t.z*e.x-t.x*e.z,this._z=t.x*e.y-t.y*e.x,this._w=i),this.normalize()}angleTo(t){return 2*Math.acos(Math.abs(Vt(this.dot(t),-1,1)))}rotateTowards(t,e){let i=this.angleTo(t);if(i===0)return this;let s=Math.min(1,e/i);return this.slerp(t,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(t){return this._x*t._x+this._y*t._y+this._z*t._z+this._w*t._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let t=this.length();return t===0?(this._x=0,this._y=0,this._z=0,this._w=1):(t=1/t,this._x=this._x*t,this._y=this._y*t,this._z=this._z*t,this._w=this._w*t),this._onChangeCallback(),this}multiply(t){return this.multiplyQuaternions(this,t)}premultiply(t){return this.multiplyQuaternions(t,this)}multiplyQuaternions(t,e){let i=t._x,s=t._y,r=t._z,o=t._w,a=e._x,l=e._y,c=e._z,u=e._w;return this._x=i*u+o*a+s*c-r*l,this._y=s*u+o*l+r*a-i*c,this._z=r*u+o*c+i*l-s*a,this._w=o*u-i*a-s*l-r*c,this._onChangeCallback(),this}slerp(t,e){let i=t._x,s=t._y,r=t._z,o=t._w,a=this.dot(t);a<0&&(i=-i,s=-s,r=-r,o=-o,a=-a);let l=1-e;if(a<.9995){let c=Math.acos(a),u=Math.sin(c);l=Math.sin(l*c)/u,e=Math.sin(e*c)/u,this._x=this._x*l+i*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+o*e,this._onChangeCallback()}else this._x=this._x*l+i*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+o*e,this.normalize();return this}slerpQuaternions(t,e,i){return this.copy(t).slerp(e,i)}random(){let t=2*Math.PI*Math.random(),e=2*Math.PI*Math.random(),i=Math.random(),s=Math.sqrt(1-i),r=Math.sqrt(i);return this.set(s*Math.sin(t),s*Math.cos(t),r*Math.sin(e),r*Math.cos(e))}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._w===this._w}fromArray(t,e=0){return this._x=t[e],this._y=t[e+1],this._z=t[e+2],this._w=t[e+3],this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._w,t}fromBufferAttribute(t,e){return this._x=t.getX(e),this._y=t.getY(e),this._z=t.getZ(e),this._w=t.getW(e),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}},N=class{static{this.prototype.isVector3=!0}constructor(t=0,e=0,i=0){this.x=t,this.y=e,this.z=i}set(t,e,i){return i===void 0&&(i=this.z),this.x=t,this.y=e,this.z=i,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;default:throw new Error("THREE.Vector3: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("THREE.Vector3: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this}multiplyVectors(t,e){return this.x=t.x*e.x,this.y=t.y*e.y,this.z=t.z*e.z,this}applyEuler(t){return this.applyQuaternion(_p.setFromEuler(t))}applyAxisAngle(t,e){return this.applyQuaternion(_p.setFromAxisAngle(t,e))}applyMatrix3(t){let e=this.x,i=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[3]*i+r[6]*s,this.y=r[1]*e+r[4]*i+r[7]*s,this.z=r[2]*e+r[5]*i+r[8]*s,this}applyNormalMatrix(t){return this.applyMatrix3(t).normalize()}applyMatrix4(t){let e=this.x,i=this.y,s=this.z,r=t.elements,o=1/(r[3]*e+r[7]*i+r[11]*s+r[15]);return this.x=(r[0]*e+r[4]*i+r[8]*s+r[12])*o,this.y=(r[1]*e+r[5]*i+r[9]*s+r[13])*o,this.z=(r[2]*e+r[6]*i+r[10]*s+r[14])*o,this}applyQuaternion(t){let e=this.x,i=this.y,s=this.z,r=t.x,o=t.y,a=t.z,l=t.w,c=2*(o*s-a*i),u=2*(a*e-r*s),f=2*(r*i-o*e);return this.x=e+l*c+o*f-a*u,this.y=i+l*u+a*c-r*f,this.z=s+l*f+r*u-o*c,this}project(t){return this.applyMatrix4(t.matrixWorldInverse).applyMatrix4(t.projectionMatrix)}unproject(t){return this.applyMatrix4(t.projectionMatrixInverse).applyMatrix4(t.matrixWorld)}transformDirection(t){let e=this.x,i=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[4]*i+r[8]*s,this.y=r[1]*e+r[5]*i+r[9]*s,this.z=r[2]*e+r[6]*i+r[10]*s,this.normalize()}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this}divideScalar(t){return this.multiplyScalar(1/t)}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this}clamp(t,e){return this.x=Vt(this.x,t.x,e.x),this.y=Vt(this.y,t.y,e.y),this.z=Vt(this.z,t.z,e.z),this}clampScalar(t,e){return this.x=Vt(this.x,t,e),this.y=Vt(this.y,t,e),this.z=Vt(this.z,t,e),this}clampLength(t,e){let i=this.length();return this.divideScalar(i||1).multiplyScalar(Vt(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this.z=t.z+(e.z-t.z)*i,this}cross(t){return this.crossVectors(this,t)}crossVectors(t,e){let i=t.x,s=t.y,r=t.z,o=e.x,a=e.y,l=e.z;return this.x=s*l-r*a,this.y=r*o-i*l,this.z=i*a-s*o,this}projectOnVector(t){let e=t.lengthSq();if(e===0)return this.set(0,0,0);let i=t.dot(this)/e;return this.copy(t).multiplyScalar(i)}projectOnPlane(t){return ju.copy(this).projectOnVector(t),this.sub(ju)}reflect(t){return this.sub(ju.copy(t).multiplyScalar(2*this.dot(t)))}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let i=this.dot(t)/e;return Math.acos(Vt(i,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,i=this.y-t.y,s=this.z-t.z;return e*e+i*i+s*s}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)+Math.abs(this.z-t.z)}setFromSpherical(t){return this.setFromSphericalCoords(t.radius,t.phi,t.theta)}setFromSphericalCoords(t,e,i){let s=Math.sin(e)*t;return this.x=s*Math.sin(i),this.y=Math.cos(e)*t,this.z=s*Math.cos(i),this}setFromCylindrical(t){return this.setFromCylindricalCoords(t.radius,t.theta,t.y)}setFromCylindricalCoords(t,e,i){return this.x=t*Math.sin(e),this.y=i,this.z=t*Math.cos(e),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this}setFromMatrixScale(t){let e=this.setFromMatrixColumn(t,0).length(),i=this.setFromMatrixColumn(t,1).length(),s=this.setFromMatrixColumn(t,2).length();return this.x=e,this.y=i,this.z=s,this}setFromMatrixColumn(t,e){return this.fromArray(t.elements,e*4)}setFromMatrix3Column(t,e){return this.fromArray(t.elements,e*3)}setFromEuler(t){return this.x=t._x,this.y=t._y,this.z=t._z,this}setFromColor(t){return this.x=t.r,this.y=t.g,this.z=t.b,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){let t=Math.random()*Math.PI*2,e=Math.random()*2-1,i=Math.sqrt(1-e*e);return this.x=i*Math.cos(t),this.y=e,this.z=i*Math.sin(t),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}},ju=new N,_p=new Be,Ft=class{static{this.prototype.isMatrix3=!0}constructor(t,e,i,s,r,o,a,l,c){this.elements=[1,0,0,0,1,0,0,0,1],t!==void 0&&this.set(t,e,i,s,r,o,a,l,c)}set(t,e,i,s,r,o,a,l,c){let u=this.elements;return u[0]=t,u[1]=s,u[2]=a,u[3]=e,u[4]=r,u[5]=l,u[6]=i,u[7]=o,u[8]=c,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(t){let e=this.elements,i=t.elements;return e[0]=i[0],e[1]=i[1],e[2]=i[2],e[3]=i[3],e[4]=i[4],e[5]=i[5],e[6]=i[6],e[7]=i[7],e[8]=i[8],this}extractBasis(t,e,i){return t.setFromMatrix3Column(this,0),e.setFromMatrix3Column(this,1),i.setFromMatrix3Column(this,2),this}setFromMatrix4(t){let e=t.elements;return this.set(e[0],e[4],e[8],e[1],e[5],e[9],e[2],e[6],e[10]),this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let i=t.elements,s=e.elements,r=this.elements,o=i[0],a=i[3],l=i[6],c=i[1],u=i[4],f=i[7],d=i[2],h=i[5],m=i[8],y=s[0],g=s[3],p=s[6],v=s[1],M=s[4],b=s[7],E=s[2],A=s[5],x=s[8];return r[0]=o*y+a*v+l*E,r[3]=o*g+a*M+l*A,r[6]=o*p+a*b+l*x,r[1]=c*y+u*v+f*E,r[4]=c*g+u*M+f*A,r[7]=c*p+u*b+f*x,r[2]=d*y+h*v+m*E,r[5]=d*g+h*M+m*A,r[8]=d*p+h*b+m*x,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[3]*=t,e[6]*=t,e[1]*=t,e[4]*=t,e[7]*=t,e[2]*=t,e[5]*=t,e[8]*=t,this}determinant(){let t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],c=t[7],u=t[8];return e*o*u-e*a*c-i*r*u+i*a*l+s*r*c-s*o*l}invert(){let t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],c=t[7],u=t[8],f=u*o-a*c,d=a*l-u*r,h=c*r-o*l,m=e*f+i*d+s*h;if(m===0)return this.set(0,0,0,0,0,0,0,0,0);let y=1/m;return t[0]=f*y,t[1]=(s*c-u*i)*y,t[2]=(a*i-s*o)*y,t[3]=d*y,t[4]=(u*e-s*l)*y,t[5]=(s*r-a*e)*y,t[6]=h*y,t[7]=(i*l-c*e)*y,t[8]=(o*e-i*r)*y,this}transpose(){let t,e=this.elements;return t=e[1],e[1]=e[3],e[3]=t,t=e[2],e[2]=e[6],e[6]=t,t=e[5],e[5]=e[7],e[7]=t,this}getNormalMatrix(t){return this.setFromMatrix4(t).invert().transpose()}transposeIntoArray(t){let e=this.elements;return t[0]=e[0],t[1]=e[3],t[2]=e[6],t[3]=e[1],t[4]=e[4],t[5]=e[7],t[6]=e[2],t[7]=e[5],t[8]=e[8],this}setUvTransform(t,e,i,s,r,o,a){let l=Math.cos(r),c=Math.sin(r);return this.set(i*l,i*c,-i*(l*o+c*a)+o+t,-s*c,s*l,-s*(-c*o+l*a)+a+e,0,0,1),this}scale(t,e){return uo("Matrix3: .scale() is deprecated. Use .makeScale() instead."),this.premultiply(Qu.makeScale(t,e)),this}rotate(t){return uo("Matrix3: .rotate() is deprecated. Use .makeRotation() instead."),this.premultiply(Qu.makeRotation(-t)),this}translate(t,e){return uo("Matrix3: .translate() is deprecated. Use .makeTranslation() instead."),this.premultiply(Qu.makeTranslation(t,e)),this}makeTranslation(t,e){return t.isVector2?this.set(1,0,t.x,0,1,t.y,0,0,1):this.set(1,0,t,0,1,e,0,0,1),this}makeRotation(t){let e=Math.cos(t),i=Math.sin(t);return this.set(e,-i,0,i,e,0,0,0,1),this}makeScale(t,e){return this.set(t,0,0,0,e,0,0,0,1),this}equals(t){let e=this.elements,i=t.elements;for(let s=0;s<9;s++)if(e[s]!==i[s])return!1;return!0}fromArray(t,e=0){for(let i=0;i<9;i++)this.elements[i]=t[i+e];return this}toArray(t=[],e=0){let i=this.elements;return t[e]=i[0],t[e+1]=i[1],t[e+2]=i[2],t[e+3]=i[3],t[e+4]=i[4],t[e+5]=i[5],t[e+6]=i[6],t[e+7]=i[7],t[e+8]=i[8],t}clone(){return new this.constructor().fromArray(this.elements)}},Qu=new Ft,vp=new Ft().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),yp=new Ft().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function G_(){let n={enabled:!0,workingColorSpace:_o,spaces:{},convert:function(s,r,o){return this.enabled===!1||r===o||!r||!o||(this.spaces[r].transfer===ae&&(s.r=Si(s.r),s.g=Si(s.g),s.b=Si(s.b)),this.spaces[r].primaries!==this.spaces[o].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[o].fromXYZ)),this.spaces[o].transfer===ae&&(s.r=cr(s.r),s.g=cr(s.g),s.b=cr(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===Pi?vo:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,o){return s.copy(this.spaces[o].fromXYZ).multiply(this.spaces[r].toXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace}},t=[.64,.33,.3,.6,.15,.06],e=[.2126,.7152,.0722],i=[.3127,.329];return n.define({[_o]:{primaries:t,whitePoint:i,transfer:vo,toXYZ:vp,fromXYZ:yp,luminanceCoefficients:e,workingColorSpaceConfig:{unpackColorSpace:wn},outputColorSpaceConfig:{drawingBufferColorSpace:wn}},[wn]:{primaries:t,whitePoint:i,transfer:ae,toXYZ:vp,fromXYZ:yp,luminanceCoefficients:e,outputColorSpaceConfig:{drawingBufferColorSpace:wn}}}),n}var Jt=G_();function Si(n){return n<.04045?n*.0773993808:Math.pow(n*.9478672986+.0521327014,2.4)}function cr(n){return n<.0031308?n*12.92:1.055*Math.pow(n,.41666)-.055}var Zs,Il=class{static getDataURL(t,e="image/png"){if(/^data:/i.test(t.src)||typeof HTMLCanvasElement>"u")return t.src;let i;if(t instanceof HTMLCanvasElement)i=t;else{Zs===void 0&&(Zs=yo("canvas")),Zs.width=t.width,Zs.height=t.height;let s=Zs.getContext("2d");t instanceof ImageData?s.putImageData(t,0,0):s.drawImage(t,0,0,t.width,t.height),i=Zs}return i.toDataURL(e)}static sRGBToLinear(t){if(typeof HTMLImageElement<"u"&&t instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&t instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&t instanceof ImageBitmap){let e=yo("canvas");e.width=t.width,e.height=t.height;let i=e.getContext("2d");i.drawImage(t,0,0,t.width,t.height);let s=i.getImageData(0,0,t.width,t.height),r=s.data;for(let o=0;o<r.length;o++)r[o]=Si(r[o]/255)*255;return i.putImageData(s,0,0),e}else if(t.data){let e=t.data.slice(0);for(let i=0;i<e.length;i++)e instanceof Uint8Array||e instanceof Uint8ClampedArray?e[i]=Math.floor(Si(e[i]/255)*255):e[i]=Si(e[i]);return{data:e,width:t.width,height:t.height}}else return Rt("ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),t}},H_=0,mr=class{constructor(t=null){this.isTextureSource=!0,Object.defineProperty(this,"id",{value:H_++}),this.uuid=Cs(),this.data=t,this.dataReady=!0,this.version=0}getSize(t){let e=this.data;return typeof HTMLVideoElement<"u"&&e instanceof HTMLVideoElement?t.set(e.videoWidth,e.videoHeight,0):typeof VideoFrame<"u"&&e instanceof VideoFrame?t.set(e.displayWidth,e.displayHeight,0):e!==null?t.set(e.width||0,e.height||0,e.depth||0):t.set(0,0,0),t}set needsUpdate(t){t===!0&&this.version++}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.images[this.uuid]!==void 0)return t.images[this.uuid];let i={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let o=0,a=s.length;o<a;o++)s[o].isDataTexture?r.push(th(s[o].image)):r.push(th(s[o]))}else r=th(s);i.url=r}return e||(t.images[this.uuid]=i),i}};function th(n){return typeof HTMLImageElement<"u"&&n instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&n instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&n instanceof ImageBitmap?Il.getDataURL(n):n.data?{data:Array.from(n.data),width:n.width,height:n.height,type:n.data.constructor.name}:(Rt("Texture: Unable to serialize Texture."),{})}var W_=0,eh=new N,pn=class n extends Zn{constructor(t=n.DEFAULT_IMAGE,e=n.DEFAULT_MAPPING,i=si,s=si,r=hn,o=Ci,a=jn,l=gn,c=n.DEFAULT_ANISOTROPY,u=Pi){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:W_++}),this.uuid=Cs(),this.name="",this.source=new mr(t),this.mipmaps=[],this.mapping=e,this.channel=0,this.wrapS=i,this.wrapT=s,this.magFilter=r,this.minFilter=o,this.anisotropy=c,this.format=a,this.internalFormat=null,this.type=l,this.offset=new rt(0,0),this.repeat=new rt(1,1),this.center=new rt(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new Ft,this.generateMipmaps=!0,this.mipmapsAutoUpdate=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=u,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(t&&t.depth&&t.depth>1),this.pmremVersion=0,this.isPMREMTexture=!1,this.normalized=!1}get width(){return this.source.getSize(eh).x}get height(){return this.source.getSize(eh).y}get depth(){return this.source.getSize(eh).z}get image(){return this.source.data}set image(t){this.source.data=t}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(t){return this.name=t.name,this.source=t.source,this.mipmaps=t.mipmaps.slice(0),this.mapping=t.mapping,this.channel=t.channel,this.wrapS=t.wrapS,this.wrapT=t.wrapT,this.magFilter=t.magFilter,this.minFilter=t.minFilter,this.anisotropy=t.anisotropy,this.format=t.format,this.internalFormat=t.internalFormat,this.type=t.type,this.normalized=t.normalized,this.offset.copy(t.offset),this.repeat.copy(t.repeat),this.center.copy(t.center),this.rotation=t.rotation,this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrix.copy(t.matrix),this.generateMipmaps=t.generateMipmaps,this.mipmapsAutoUpdate=t.mipmapsAutoUpdate,this.premultiplyAlpha=t.premultiplyAlpha,this.flipY=t.flipY,this.unpackAlignment=t.unpackAlignment,this.colorSpace=t.colorSpace,this.renderTarget=t.renderTarget,this.isRenderTargetTexture=t.isRenderTargetTexture,this.isPMREMTexture=t.isPMREMTexture,this.isArrayTexture=t.isArrayTexture,this.userData=JSON.parse(JSON.stringify(t.userData)),this.needsUpdate=!0,this}setValues(t){for(let e in t){let i=t[e];if(i===void 0){Rt(`Texture.setValues(): parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){Rt(`Texture.setValues(): property '${e}' does not exist.`);continue}s&&i&&s.isVector2&&i.isVector2||s&&i&&s.isVector3&&i.isVector3||s&&i&&s.isMatrix3&&i.isMatrix3?s.copy(i):this[e]=i}}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.textures[this.uuid]!==void 0)return t.textures[this.uuid];let i={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(t).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,normalized:this.normalized,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,mipmapsAutoUpdate:this.mipmapsAutoUpdate,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(i.userData=this.userData),e||(t.textures[this.uuid]=i),i}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(t){if(this.mapping!==Xh)return t;if(t.applyMatrix3(this.matrix),t.x<0||t.x>1)switch(this.wrapS){case Cl:t.x=t.x-Math.floor(t.x);break;case si:t.x=t.x<0?0:1;break;case Rl:Math.abs(Math.floor(t.x)%2)===1?t.x=Math.ceil(t.x)-t.x:t.x=t.x-Math.floor(t.x);break}if(t.y<0||t.y>1)switch(this.wrapT){case Cl:t.y=t.y-Math.floor(t.y);break;case si:t.y=t.y<0?0:1;break;case Rl:Math.abs(Math.floor(t.y)%2)===1?t.y=Math.ceil(t.y)-t.y:t.y=t.y-Math.floor(t.y);break}return this.flipY&&(t.y=1-t.y),t}set needsUpdate(t){t===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(t){t===!0&&this.pmremVersion++}};pn.DEFAULT_IMAGE=null;pn.DEFAULT_MAPPING=Xh;pn.DEFAULT_ANISOTROPY=1;var Se=class{static{this.prototype.isVector4=!0}constructor(t=0,e=0,i=0,s=1){this.x=t,this.y=e,this.z=i,this.w=s}get width(){return this.z}set width(t){this.z=t}get height(){return this.w}set height(t){this.w=t}set(t,e,i,s){return this.x=t,this.y=e,this.z=i,this.w=s,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this.w=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setW(t){return this.w=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;case 3:this.w=e;break;default:throw new Error("THREE.Vector4: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("THREE.Vector4: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this.w=t.w!==void 0?t.w:1,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this.w+=t.w,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this.w+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this.w=t.w+e.w,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this.w+=t.w*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this.w-=t.w,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this.w-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this.w=t.w-e.w,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this.w*=t.w,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this.w*=t,this}applyMatrix4(t){let e=this.x,i=this.y,s=this.z,r=this.w,o=t.elements;return this.x=o[0]*e+o[4]*i+o[8]*s+o[12]*r,this.y=o[1]*e+o[5]*i+o[9]*s+o[13]*r,this.z=o[2]*e+o[6]*i+o[10]*s+o[14]*r,this.w=o[3]*e+o[7]*i+o[11]*s+o[15]*r,this}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this.w/=t.w,this}divideScalar(t){return this.multiplyScalar(1/t)}setAxisAngleFromQuaternion(t){this.w=2*Math.acos(t.w);let e=Math.sqrt(1-t.w*t.w);return e<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=t.x/e,this.y=t.y/e,this.z=t.z/e),this}setAxisAngleFromRotationMatrix(t){let e,i,s,r,l=t.elements,c=l[0],u=l[4],f=l[8],d=l[1],h=l[5],m=l[9],y=l[2],g=l[6],p=l[10];if(Math.abs(u-d)<.01&&Math.abs(f-y)<.01&&Math.abs(m-g)<.01){if(Math.abs(u+d)<.1&&Math.abs(f+y)<.1&&Math.abs(m+g)<.1&&Math.abs(c+h+p-3)<.1)return this.set(1,0,0,0),this;e=Math.PI;let M=(c+1)/2,b=(h+1)/2,E=(p+1)/2,A=(u+d)/4,x=(f+y)/4,T=(m+g)/4;return M>b&&M>E?M<.01?(i=0,s=.707106781,r=.707106781):(i=Math.sqrt(M),s=A/i,r=x/i):b>E?b<.01?(i=.707106781,s=0,r=.707106781):(s=Math.sqrt(b),i=A/s,r=T/s):E<.01?(i=.707106781,s=.707106781,r=0):(r=Math.sqrt(E),i=x/r,s=T/r),this.set(i,s,r,e),this}let v=Math.sqrt((g-m)*(g-m)+(f-y)*(f-y)+(d-u)*(d-u));return Math.abs(v)<.001&&(v=1),this.x=(g-m)/v,this.y=(f-y)/v,this.z=(d-u)/v,this.w=Math.acos((c+h+p-1)/2),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this.w=e[15],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this.w=Math.min(this.w,t.w),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this.w=Math.max(this.w,t.w),this}clamp(t,e){return this.x=Vt(this.x,t.x,e.x),this.y=Vt(this.y,t.y,e.y),this.z=Vt(this.z,t.z,e.z),this.w=Vt(this.w,t.w,e.w),this}clampScalar(t,e){return this.x=Vt(this.x,t,e),this.y=Vt(this.y,t,e),this.z=Vt(this.z,t,e),this.w=Vt(this.w,t,e),this}clampLength(t,e){let i=this.length();return this.divideScalar(i||1).multiplyScalar(Vt(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z+this.w*t.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this.w+=(t.w-this.w)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this.z=t.z+(e.z-t.z)*i,this.w=t.w+(e.w-t.w)*i,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z&&t.w===this.w}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this.w=t[e+3],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t[e+3]=this.w,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this.w=t.getW(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}},Dl=class extends Zn{constructor(t=1,e=1,i={}){super(),i=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:hn,depthBuffer:!0,stencilBuffer:!1,resolveColorBuffer:!0,resolveDepthBuffer:!0,resolveStencilBuffer:!0,storeMultisampledColorBuffer:!0,storeMultisampledDepthBuffer:!0,storeMultisampledStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1,useArrayDepthTexture:!1},i),this.isRenderTarget=!0,this.width=t,this.height=e,this.depth=i.depth,this.scissor=new Se(0,0,t,e),this.scissorTest=!1,this.viewport=new Se(0,0,t,e),this.textures=[];let s=i.count;for(let r=0;r<s;r++)this.textures[r]=new pn({width:t,height:e,depth:i.depth}),this.textures[r].isRenderTargetTexture=!0,this.textures[r].renderTarget=this;this._setTextureOptions(i),this.depthBuffer=i.depthBuffer,this.stencilBuffer=i.stencilBuffer,this.resolveColorBuffer=i.resolveColorBuffer,this.resolveDepthBuffer=i.resolveDepthBuffer,this.resolveStencilBuffer=i.resolveStencilBuffer,this.storeMultisampledColorBuffer=i.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=i.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=i.storeMultisampledStencilBuffer,this._depthTexture=null,this.depthTexture=i.depthTexture,this.samples=i.samples,this.multiview=i.multiview,this.useArrayDepthTexture=i.useArrayDepthTexture}_setTextureOptions(t={}){let e={minFilter:hn,generateMipmaps:!1,flipY:!1,internalFormat:null};t.mapping!==void 0&&(e.mapping=t.mapping),t.wrapS!==void 0&&(e.wrapS=t.wrapS),t.wrapT!==void 0&&(e.wrapT=t.wrapT),t.wrapR!==void 0&&(e.wrapR=t.wrapR),t.magFilter!==void 0&&(e.magFilter=t.magFilter),t.minFilter!==void 0&&(e.minFilter=t.minFilter),t.format!==void 0&&(e.format=t.format),t.type!==void 0&&(e.type=t.type),t.anisotropy!==void 0&&(e.anisotropy=t.anisotropy),t.colorSpace!==void 0&&(e.colorSpace=t.colorSpace),t.flipY!==void 0&&(e.flipY=t.flipY),t.generateMipmaps!==void 0&&(e.generateMipmaps=t.generateMipmaps),t.mipmapsAutoUpdate!==void 0&&(e.mipmapsAutoUpdate=t.mipmapsAutoUpdate),t.internalFormat!==void 0&&(e.internalFormat=t.internalFormat);for(let i=0;i<this.textures.length;i++)this.textures[i].setValues(e)}get texture(){return this.textures[0]}set texture(t){this.textures[0]=t}set depthTexture(t){this._depthTexture!==null&&this._depthTexture.renderTarget===this&&(this._depthTexture.renderTarget=null),t!==null&&t.renderTarget===null&&(t.renderTarget=this),this._depthTexture=t}get depthTexture(){return this._depthTexture}setSize(t,e,i=1){if(this.width!==t||this.height!==e||this.depth!==i){this.width=t,this.height=e,this.depth=i;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=t,this.textures[s].image.height=e,this.textures[s].image.depth=i,this.textures[s].isData3DTexture!==!0&&(this.textures[s].isArrayTexture=this.textures[s].image.depth>1);this.dispose()}this.viewport.set(0,0,t,e),this.scissor.set(0,0,t,e)}clone(){return new this.constructor().copy(this)}copy(t){this.width=t.width,this.height=t.height,this.depth=t.depth,this.scissor.copy(t.scissor),this.scissorTest=t.scissorTest,this.viewport.copy(t.viewport),this.textures.length=0;for(let e=0,i=t.textures.length;e<i;e++){this.textures[e]=t.textures[e].clone(),this.textures[e].isRenderTargetTexture=!0,this.textures[e].renderTarget=this;let s=Object.assign({},t.textures[e].image);this.textures[e].source=new mr(s)}if(this.depthBuffer=t.depthBuffer,this.stencilBuffer=t.stencilBuffer,this.resolveColorBuffer=t.resolveColorBuffer,this.resolveDepthBuffer=t.resolveDepthBuffer,this.resolveStencilBuffer=t.resolveStencilBuffer,this.storeMultisampledColorBuffer=t.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=t.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=t.storeMultisampledStencilBuffer,t.depthTexture!==null)if(t.depthTexture.renderTarget===t){let e=t.depthTexture.clone();e.renderTarget=null,this.depthTexture=e}else this.depthTexture=t.depthTexture;else this.depthTexture=null;return this.samples=t.samples,this.multiview=t.multiview,this.useArrayDepthTexture=t.useArrayDepthTexture,this}dispose(){this.dispatchEvent({type:"dispose"})}},An=class extends Dl{constructor(t=1,e=1,i={}){super(t,e,i),this.isWebGLRenderTarget=!0}},xo=class extends pn{constructor(t=null,e=1,i=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:t,width:e,height:i,depth:s},this.magFilter=qe,this.minFilter=qe,this.wrapR=si,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}addLayerUpdate(t){this.layerUpdates.add(t)}clearLayerUpdates(){this.layerUpdates.clear()}};var Ll=class extends pn{constructor(t=null,e=1,i=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:t,width:e,height:i,depth:s},this.magFilter=qe,this.minFilter=qe,this.wrapR=si,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}};var Qt=class n{static{this.prototype.isMatrix4=!0}constructor(t,e,i,s,r,o,a,l,c,u,f,d,h,m,y,g){this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],t!==void 0&&this.set(t,e,i,s,r,o,a,l,c,u,f,d,h,m,y,g)}set(t,e,i,s,r,o,a,l,c,u,f,d,h,m,y,g){let p=this.elements;return p[0]=t,p[4]=e,p[8]=i,p[12]=s,p[1]=r,p[5]=o,p[9]=a,p[13]=l,p[2]=c,p[6]=u,p[10]=f,p[14]=d,p[3]=h,p[7]=m,p[11]=y,p[15]=g,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new n().fromArray(this.elements)}copy(t){let e=this.elements,i=t.elements;return e[0]=i[0],e[1]=i[1],e[2]=i[2],e[3]=i[3],e[4]=i[4],e[5]=i[5],e[6]=i[6],e[7]=i[7],e[8]=i[8],e[9]=i[9],e[10]=i[10],e[11]=i[11],e[12]=i[12],e[13]=i[13],e[14]=i[14],e[15]=i[15],this}copyPosition(t){let e=this.elements,i=t.elements;return e[12]=i[12],e[13]=i[13],e[14]=i[14],this}setFromMatrix3(t){let e=t.elements;return this.set(e[0],e[3],e[6],0,e[1],e[4],e[7],0,e[2],e[5],e[8],0,0,0,0,1),this}extractBasis(t,e,i){return this.determinantAffine()===0?(t.set(1,0,0),e.set(0,1,0),i.set(0,0,1),this):(t.setFromMatrixColumn(this,0),e.setFromMatrixColumn(this,1),i.setFromMatrixColumn(this,2),this)}makeBasis(t,e,i){return this.set(t.x,e.x,i.x,0,t.y,e.y,i.y,0,t.z,e.z,i.z,0,0,0,0,1),this}extractRotation(t){if(t.determinantAffine()===0)return this.identity();let e=this.elements,i=t.elements,s=1/Js.setFromMatrixColumn(t,0).length(),r=1/Js.setFromMatrixColumn(t,1).length(),o=1/Js.setFromMatrixColumn(t,2).length();return e[0]=i[0]*s,e[1]=i[1]*s,e[2]=i[2]*s,e[3]=0,e[4]=i[4]*r,e[5]=i[5]*r,e[6]=i[6]*r,e[7]=0,e[8]=i[8]*o,e[9]=i[9]*o,e[10]=i[10]*o,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromEuler(t){let e=this.elements,i=t.x,s=t.y,r=t.z,o=Math.cos(i),a=Math.sin(i),l=Math.cos(s),c=Math.sin(s),u=Math.cos(r),f=Math.sin(r);if(t.order==="XYZ"){let d=o*u,h=o*f,m=a*u,y=a*f;e[0]=l*u,e[4]=-l*f,e[8]=c,e[1]=h+m*c,e[5]=d-y*c,e[9]=-a*l,e[2]=y-d*c,e[6]=m+h*c,e[10]=o*l}else if(t.order==="YXZ"){let d=l*u,h=l*f,m=c*u,y=c*f;e[0]=d+y*a,e[4]=m*a-h,e[8]=o*c,e[1]=o*f,e[5]=o*u,e[9]=-a,e[2]=h*a-m,e[6]=y+d*a,e[10]=o*l}else if(t.order==="ZXY"){let d=l*u,h=l*f,m=c*u,y=c*f;e[0]=d-y*a,e[4]=-o*f,e[8]=m+h*a,e[1]=h+m*a,e[5]=o*u,e[9]=y-d*a,e[2]=-o*c,e[6]=a,e[10]=o*l}else if(t.order==="ZYX"){let d=o*u,h=o*f,m=a*u,y=a*f;e[0]=l*u,e[4]=m*c-h,e[8]=d*c+y,e[1]=l*f,e[5]=y*c+d,e[9]=h*c-m,e[2]=-c,e[6]=a*l,e[10]=o*l}else if(t.order==="YZX"){let d=o*l,h=o*c,m=a*l,y=a*c;e[0]=l*u,e[4]=y-d*f,e[8]=m*f+h,e[1]=f,e[5]=o*u,e[9]=-a*u,e[2]=-c*u,e[6]=h*f+m,e[10]=d-y*f}else if(t.order==="XZY"){let d=o*l,h=o*c,m=a*l,y=a*c;e[0]=l*u,e[4]=-f,e[8]=c*u,e[1]=d*f+y,e[5]=o*u,e[9]=h*f-m,e[2]=m*f-h,e[6]=a*u,e[10]=y*f+d}return e[3]=0,e[7]=0,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromQuaternion(t){return this.compose(X_,t,q_)}lookAt(t,e,i){let s=this.elements;return Mn.subVectors(t,e),Mn.lengthSq()===0&&(Mn.z=1),Mn.normalize(),Oi.crossVectors(i,Mn),Oi.lengthSq()===0&&(Math.abs(i.z)===1?Mn.x+=1e-4:Mn.z+=1e-4,Mn.normalize(),Oi.crossVectors(i,Mn)),Oi.normalize(),qa.crossVectors(Mn,Oi),s[0]=Oi.x,s[4]=qa.x,s[8]=Mn.x,s[1]=Oi.y,s[5]=qa.y,s[9]=Mn.y,s[2]=Oi.z,s[6]=qa.z,s[10]=Mn.z,this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let i=t.elements,s=e.elements,r=this.elements,o=i[0],a=i[4],l=i[8],c=i[12],u=i[1],f=i[5],d=i[9],h=i[13],m=i[2],y=i[6],g=i[10],p=i[14],v=i[3],M=i[7],b=i[11],E=i[15],A=s[0],x=s[4],T=s[8],D=s[12],R=s[1],P=s[5],F=s[9],k=s[13],I=s[2],W=s[6],X=s[10],B=s[14],Q=s[3],G=s[7],tt=s[11],et=s[15];return r[0]=o*A+a*R+l*I+c*Q,r[4]=o*x+a*P+l*W+c*G,r[8]=o*T+a*F+l*X+c*tt,r[12]=o*D+a*k+l*B+c*et,r[1]=u*A+f*R+d*I+h*Q,r[5]=u*x+f*P+d*W+h*G,r[9]=u*T+f*F+d*X+h*tt,r[13]=u*D+f*k+d*B+h*et,r[2]=m*A+y*R+g*I+p*Q,r[6]=m*x+y*P+g*W+p*G,r[10]=m*T+y*F+g*X+p*tt,r[14]=m*D+y*k+g*B+p*et,r[3]=v*A+M*R+b*I+E*Q,r[7]=v*x+M*P+b*W+E*G,r[11]=v*T+M*F+b*X+E*tt,r[15]=v*D+M*k+b*B+E*et,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[4]*=t,e[8]*=t,e[12]*=t,e[1]*=t,e[5]*=t,e[9]*=t,e[13]*=t,e[2]*=t,e[6]*=t,e[10]*=t,e[14]*=t,e[3]*=t,e[7]*=t,e[11]*=t,e[15]*=t,this}determinant(){let t=this.elements,e=t[0],i=t[4],s=t[8],r=t[12],o=t[1],a=t[5],l=t[9],c=t[13],u=t[2],f=t[6],d=t[10],h=t[14],m=t[3],y=t[7],g=t[11],p=t[15],v=l*h-c*d,M=a*h-c*f,b=a*d-l*f,E=o*h-c*u,A=o*d-l*u,x=o*f-a*u;return e*(y*v-g*M+p*b)-i*(m*v-g*E+p*A)+s*(m*M-y*E+p*x)-r*(m*b-y*A+g*x)}determinantAffine(){let t=this.elements,e=t[0],i=t[4],s=t[8],r=t[1],o=t[5],a=t[9],l=t[2],c=t[6],u=t[10];return e*(o*u-a*c)-i*(r*u-a*l)+s*(r*c-o*l)}transpose(){let t=this.elements,e;return e=t[1],t[1]=t[4],t[4]=e,e=t[2],t[2]=t[8],t[8]=e,e=t[6],t[6]=t[9],t[9]=e,e=t[3],t[3]=t[12],t[12]=e,e=t[7],t[7]=t[13],t[13]=e,e=t[11],t[11]=t[14],t[14]=e,this}setPosition(t,e,i){let s=this.elements;return t.isVector3?(s[12]=t.x,s[13]=t.y,s[14]=t.z):(s[12]=t,s[13]=e,s[14]=i),this}invert(){let t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],c=t[7],u=t[8],f=t[9],d=t[10],h=t[11],m=t[12],y=t[13],g=t[14],p=t[15],v=e*a-i*o,M=e*l-s*o,b=e*c-r*o,E=i*l-s*a,A=i*c-r*a,x=s*c-r*l,T=u*y-f*m,D=u*g-d*m,R=u*p-h*m,P=f*g-d*y,F=f*p-h*y,k=d*p-h*g,I=v*k-M*F+b*P+E*R-A*D+x*T;if(I===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);let W=1/I;return t[0]=(a*k-l*F+c*P)*W,t[1]=(s*F-i*k-r*P)*W,t[2]=(y*x-g*A+p*E)*W,t[3]=(d*A-f*x-h*E)*W,t[4]=(l*R-o*k-c*D)*W,t[5]=(e*k-s*R+r*D)*W,t[6]=(g*b-m*x-p*M)*W,t[7]=(u*x-d*b+h*M)*W,t[8]=(o*F-a*R+c*T)*W,t[9]=(i*R-e*F-r*T)*W,t[10]=(m*A-y*b+p*v)*W,t[11]=(f*b-u*A-h*v)*W,t[12]=(a*D-o*P-l*T)*W,t[13]=(e*P-i*D+s*T)*W,t[14]=(y*M-m*E-g*v)*W,t[15]=(u*E-f*M+d*v)*W,this}scale(t){let e=this.elements,i=t.x,s=t.y,r=t.z;return e[0]*=i,e[4]*=s,e[8]*=r,e[1]*=i,e[5]*=s,e[9]*=r,e[2]*=i,e[6]*=s,e[10]*=r,e[3]*=i,e[7]*=s,e[11]*=r,this}getMaxScaleOnAxis(){let t=this.elements,e=t[0]*t[0]+t[1]*t[1]+t[2]*t[2],i=t[4]*t[4]+t[5]*t[5]+t[6]*t[6],s=t[8]*t[8]+t[9]*t[9]+t[10]*t[10];return Math.sqrt(Math.max(e,i,s))}makeTranslation(t,e,i){return t.isVector3?this.set(1,0,0,t.x,0,1,0,t.y,0,0,1,t.z,0,0,0,1):this.set(1,0,0,t,0,1,0,e,0,0,1,i,0,0,0,1),this}makeRotationX(t){let e=Math.cos(t),i=Math.sin(t);return this.set(1,0,0,0,0,e,-i,0,0,i,e,0,0,0,0,1),this}makeRotationY(t){let e=Math.cos(t),i=Math.sin(t);return this.set(e,0,i,0,0,1,0,0,-i,0,e,0,0,0,0,1),this}makeRotationZ(t){let e=Math.cos(t),i=Math.sin(t);return this.set(e,-i,0,0,i,e,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(t,e){let i=Math.cos(e),s=Math.sin(e),r=1-i,o=t.x,a=t.y,l=t.z,c=r*o,u=r*a;return this.set(c*o+i,c*a-s*l,c*l+s*a,0,c*a+s*l,u*a+i,u*l-s*o,0,c*l-s*a,u*l+s*o,r*l*l+i,0,0,0,0,1),this}makeScale(t,e,i){return this.set(t,0,0,0,0,e,0,0,0,0,i,0,0,0,0,1),this}makeShear(t,e,i,s,r,o){return this.set(1,i,r,0,t,1,o,0,e,s,1,0,0,0,0,1),this}compose(t,e,i){let s=this.elements,r=e._x,o=e._y,a=e._z,l=e._w,c=r+r,u=o+o,f=a+a,d=r*c,h=r*u,m=r*f,y=o*u,g=o*f,p=a*f,v=l*c,M=l*u,b=l*f,E=i.x,A=i.y,x=i.z;return s[0]=(1-(y+p))*E,s[1]=(h+b)*E,s[2]=(m-M)*E,s[3]=0,s[4]=(h-b)*A,s[5]=(1-(d+p))*A,s[6]=(g+v)*A,s[7]=0,s[8]=(m+M)*x,s[9]=(g-v)*x,s[10]=(1-(d+y))*x,s[11]=0,s[12]=t.x,s[13]=t.y,s[14]=t.z,s[15]=1,this}decompose(t,e,i){let s=this.elements;t.x=s[12],t.y=s[13],t.z=s[14];let r=this.determinantAffine();if(r===0)return i.set(1,1,1),e.identity(),this;let o=Js.set(s[0],s[1],s[2]).length(),a=Js.set(s[4],s[5],s[6]).length(),l=Js.set(s[8],s[9],s[10]).length();r<0&&(o=-o),qn.copy(this);let c=1/o,u=1/a,f=1/l;return qn.elements[0]*=c,qn.elements[1]*=c,qn.elements[2]*=c,qn.elements[4]*=u,qn.elements[5]*=u,qn.elements[6]*=u,qn.elements[8]*=f,qn.elements[9]*=f,qn.elements[10]*=f,e.setFromRotationMatrix(qn),i.x=o,i.y=a,i.z=l,this}makePerspective(t,e,i,s,r,o,a=Bn,l=!1){let c=this.elements,u=2*r/(e-t),f=2*r/(i-s),d=(e+t)/(e-t),h=(i+s)/(i-s),m,y;if(l)m=r/(o-r),y=o*r/(o-r);else if(a===Bn)m=-(o+r)/(o-r),y=-2*o*r/(o-r);else if(a===fr)m=-o/(o-r),y=-o*r/(o-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+a);return c[0]=u,c[4]=0,c[8]=d,c[12]=0,c[1]=0,c[5]=f,c[9]=h,c[13]=0,c[2]=0,c[6]=0,c[10]=m,c[14]=y,c[3]=0,c[7]=0,c[11]=-1,c[15]=0,this}makeOrthographic(t,e,i,s,r,o,a=Bn,l=!1){let c=this.elements,u=2/(e-t),f=2/(i-s),d=-(e+t)/(e-t),h=-(i+s)/(i-s),m,y;if(l)m=1/(o-r),y=o/(o-r);else if(a===Bn)m=-2/(o-r),y=-(o+r)/(o-r);else if(a===fr)m=-1/(o-r),y=-r/(o-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+a);return c[0]=u,c[4]=0,c[8]=0,c[12]=d,c[1]=0,c[5]=f,c[9]=0,c[13]=h,c[2]=0,c[6]=0,c[10]=m,c[14]=y,c[3]=0,c[7]=0,c[11]=0,c[15]=1,this}equals(t){let e=this.elements,i=t.elements;for(let s=0;s<16;s++)if(e[s]!==i[s])return!1;return!0}fromArray(t,e=0){for(let i=0;i<16;i++)this.elements[i]=t[i+e];return this}toArray(t=[],e=0){let i=this.elements;return t[e]=i[0],t[e+1]=i[1],t[e+2]=i[2],t[e+3]=i[3],t[e+4]=i[4],t[e+5]=i[5],t[e+6]=i[6],t[e+7]=i[7],t[e+8]=i[8],t[e+9]=i[9],t[e+10]=i[10],t[e+11]=i[11],t[e+12]=i[12],t[e+13]=i[13],t[e+14]=i[14],t[e+15]=i[15],t}},Js=new N,qn=new Qt,X_=new N(0,0,0),q_=new N(1,1,1),Oi=new N,qa=new N,Mn=new N,xp=new Qt,bp=new Be,Ti=class n{constructor(t=0,e=0,i=0,s=n.DEFAULT_ORDER){this.isEuler=!0,this._x=t,this._y=e,this._z=i,this._order=s}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get order(){return this._order}set order(t){this._order=t,this._onChangeCallback()}set(t,e,i,s=this._order){return this._x=t,this._y=e,this._z=i,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(t){return this._x=t._x,this._y=t._y,this._z=t._z,this._order=t._order,this._onChangeCallback(),this}setFromRotationMatrix(t,e=this._order,i=!0){let s=t.elements,r=s[0],o=s[4],a=s[8],l=s[1],c=s[5],u=s[9],f=s[2],d=s[6],h=s[10];switch(e){case"XYZ":this._y=Math.asin(Vt(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(-u,h),this._z=Math.atan2(-o,r)):(this._x=Math.atan2(d,c),this._z=0);break;case"YXZ":this._x=Math.asin(-Vt(u,-1,1)),Math.abs(u)<.9999999?(this._y=Math.atan2(a,h),this._z=Math.atan2(l,c)):(this._y=Math.atan2(-f,r),this._z=0);break;case"ZXY":this._x=Math.asin(Vt(d,-1,1)),Math.abs(d)<.9999999?(this._y=Math.atan2(-f,h),this._z=Math.atan2(-o,c)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-Vt(f,-1,1)),Math.abs(f)<.9999999?(this._x=Math.atan2(d,h),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-o,c));break;case"YZX":this._z=Math.asin(Vt(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-u,c),this._y=Math.atan2(-f,r)):(this._x=0,this._y=Math.atan2(a,h));break;case"XZY":this._z=Math.asin(-Vt(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(d,c),this._y=Math.atan2(a,r)):(this._x=Math.atan2(-u,h),this._y=0);break;default:Rt("Euler: .setFromRotationMatrix() encountered an unknown order: "+e)}return this._order=e,i===!0&&this._onChangeCallback(),this}setFromQuaternion(t,e,i){return xp.makeRotationFromQuaternion(t),this.setFromRotationMatrix(xp,e,i)}setFromVector3(t,e=this._order){return this.set(t.x,t.y,t.z,e)}reorder(t){return bp.setFromEuler(this),this.setFromQuaternion(bp,t)}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._order===this._order}fromArray(t){return this._x=t[0],this._y=t[1],this._z=t[2],t[3]!==void 0&&(this._order=t[3]),this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._order,t}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}};Ti.DEFAULT_ORDER="XYZ";var bo=class{constructor(){this.mask=1}set(t){this.mask=(1<<t|0)>>>0}enable(t){this.mask|=1<<t|0}enableAll(){this.mask=-1}toggle(t){this.mask^=1<<t|0}disable(t){this.mask&=~(1<<t|0)}disableAll(){this.mask=0}test(t){return(this.mask&t.mask)!==0}isEnabled(t){return(this.mask&(1<<t|0))!==0}},Y_=0,Mp=new N,Ks=new Be,vi=new Qt,Ya=new N,no=new N,$_=new N,Z_=new Be,Sp=new N(1,0,0),wp=new N(0,1,0),Tp=new N(0,0,1),Ap={type:"added"},J_={type:"removed"},js={type:"childadded",child:null},nh={type:"childremoved",child:null},Ye=class n extends Zn{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:Y_++}),this.uuid=Cs(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=n.DEFAULT_UP.clone();let t=new N,e=new Ti,i=new Be,s=new N(1,1,1);function r(){i.setFromEuler(e,!1)}function o(){e.setFromQuaternion(i,void 0,!1)}e._onChange(r),i._onChange(o),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:t},rotation:{configurable:!0,enumerable:!0,value:e},quaternion:{configurable:!0,enumerable:!0,value:i},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new Qt},normalMatrix:{value:new Ft}}),this.matrix=new Qt,this.matrixWorld=new Qt,this.matrixAutoUpdate=n.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=n.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new bo,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.static=!1,this.userData={},this.pivot=null}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(t){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(t),this.matrix.decompose(this.position,this.quaternion,this.scale),this.pivot!==null&&this.position.copy(this.pivot).applyMatrix4(this.matrix).sub(this.pivot)}applyQuaternion(t){return this.quaternion.premultiply(t),this}setRotationFromAxisAngle(t,e){this.quaternion.setFromAxisAngle(t,e)}setRotationFromEuler(t){this.quaternion.setFromEuler(t,!0)}setRotationFromMatrix(t){this.quaternion.setFromRotationMatrix(t)}setRotationFromQuaternion(t){this.quaternion.copy(t)}rotateOnAxis(t,e){return Ks.setFromAxisAngle(t,e),this.quaternion.multiply(Ks),this}rotateOnWorldAxis(t,e){return Ks.setFromAxisAngle(t,e),this.quaternion.premultiply(Ks),this}rotateX(t){return this.rotateOnAxis(Sp,t)}rotateY(t){return this.rotateOnAxis(wp,t)}rotateZ(t){return this.rotateOnAxis(Tp,t)}translateOnAxis(t,e){return Mp.copy(t).applyQuaternion(this.quaternion),this.position.add(Mp.multiplyScalar(e)),this}translateX(t){return this.translateOnAxis(Sp,t)}translateY(t){return this.translateOnAxis(wp,t)}translateZ(t){return this.translateOnAxis(Tp,t)}localToWorld(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(this.matrixWorld)}worldToLocal(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(vi.copy(this.matrixWorld).invert())}lookAt(t,e,i){t.isVector3?Ya.copy(t):Ya.set(t,e,i);let s=this.parent;this.updateWorldMatrix(!0,!1),no.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?vi.lookAt(no,Ya,this.up):vi.lookAt(Ya,no,this.up),this.quaternion.setFromRotationMatrix(vi),s&&(vi.extractRotation(s.matrixWorld),Ks.setFromRotationMatrix(vi),this.quaternion.premultiply(Ks.invert()))}add(t){if(arguments.length>1){for(let e=0;e<arguments.length;e++)this.add(arguments[e]);return this}return t===this?(Nt("Object3D.add: object can't be added as a child of itself.",t),this):(t&&t.isObject3D?(t.removeFromParent(),t.parent=this,this.children.push(t),t.dispatchEvent(Ap),js.child=t,this.dispatchEvent(js),js.child=null):Nt("Object3D.add: object not an instance of THREE.Object3D.",t),this)}remove(t){if(arguments.length>1){for(let i=0;i<arguments.length;i++)this.remove(arguments[i]);return this}let e=this.children.indexOf(t);return e!==-1&&(t.parent=null,this.children.splice(e,1),t.dispatchEvent(J_),nh.child=t,this.dispatchEvent(nh),nh.child=null),this}removeFromParent(){let t=this.parent;return t!==null&&t.remove(this),this}clear(){return this.remove(...this.children)}attach(t){return this.updateWorldMatrix(!0,!1),vi.copy(this.matrixWorld).invert(),t.parent!==null&&(t.parent.updateWorldMatrix(!0,!1),vi.multiply(t.parent.matrixWorld)),t.applyMatrix4(vi),t.removeFromParent(),t.parent=this,this.children.push(t),t.updateWorldMatrix(!1,!0),t.dispatchEvent(Ap),js.child=t,this.dispatchEvent(js),js.child=null,this}getObjectById(t){return this.getObjectByProperty("id",t)}getObjectByName(t){return this.getObjectByProperty("name",t)}getObjectByProperty(t,e){if(this[t]===e)return this;for(let i=0,s=this.children.length;i<s;i++){let o=this.children[i].getObjectByProperty(t,e);if(o!==void 0)return o}}getObjectsByProperty(t,e,i=[]){this[t]===e&&i.push(this);let s=this.children;for(let r=0,o=s.length;r<o;r++)s[r].getObjectsByProperty(t,e,i);return i}getWorldPosition(t){return this.updateWorldMatrix(!0,!1),t.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(no,t,$_),t}getWorldScale(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(no,Z_,t),t}getWorldDirection(t){this.updateWorldMatrix(!0,!1);let e=this.matrixWorld.elements;return t.set(e[8],e[9],e[10]).normalize()}raycast(){}intersectsFrustum(){return!0}traverse(t){t(this);let e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].traverse(t)}traverseVisible(t){if(this.visible===!1)return;t(this);let e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].traverseVisible(t)}traverseAncestors(t){let e=this.parent;e!==null&&(t(e),e.traverseAncestors(t))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale);let t=this.pivot;if(t!==null){let e=t.x,i=t.y,s=t.z,r=this.matrix.elements;r[12]+=e-r[0]*e-r[4]*i-r[8]*s,r[13]+=i-r[1]*e-r[5]*i-r[9]*s,r[14]+=s-r[2]*e-r[6]*i-r[10]*s}this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(t){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||t)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,t=!0);let e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].updateMatrixWorld(t)}updateWorldMatrix(t,e,i=!1){let s=this.parent;if(t===!0&&s!==null&&s.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||i)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,i=!0),e===!0){let r=this.children;for(let o=0,a=r.length;o<a;o++)r[o].updateWorldMatrix(!1,!0,i)}}toJSON(t){let e=t===void 0||typeof t=="string",i={};e&&(t={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},i.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});let s={};s.uuid=this.uuid,s.type=this.type,s.name=this.name,s.castShadow=this.castShadow,s.receiveShadow=this.receiveShadow,s.visible=this.visible,s.frustumCulled=this.frustumCulled,s.renderOrder=this.renderOrder,s.static=this.static,s.matrixAutoUpdate=this.matrixAutoUpdate,Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.pivot!==null&&(s.pivot=this.pivot.toArray()),this.morphTargetDictionary!==void 0&&(s.morphTargetDictionary=Object.assign({},this.morphTargetDictionary)),this.morphTargetInfluences!==void 0&&(s.morphTargetInfluences=this.morphTargetInfluences.slice()),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(a=>({...a,boundingBox:a.boundingBox?a.boundingBox.toJSON():void 0,boundingSphere:a.boundingSphere?a.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(a=>({...a})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(t),s.indirectTexture=this._indirectTexture.toJSON(t),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(t)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(a,l){return a[l.uuid]===void 0&&(a[l.uuid]=l.toJSON(t)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(t).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(t).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(t.geometries,this.geometry);let a=this.geometry.parameters;if(a!==void 0&&a.shapes!==void 0){let l=a.shapes;if(Array.isArray(l))for(let c=0,u=l.length;c<u;c++){let f=l[c];r(t.shapes,f)}else r(t.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(t.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){let a=[];for(let l=0,c=this.material.length;l<c;l++)a.push(r(t.materials,this.material[l]));s.material=a}else s.material=r(t.materials,this.material);if(this.children.length>0){s.children=[];for(let a=0;a<this.children.length;a++)s.children.push(this.children[a].toJSON(t).object)}if(this.animations.length>0){s.animations=[];for(let a=0;a<this.animations.length;a++){let l=this.animations[a];s.animations.push(r(t.animations,l))}}if(e){let a=o(t.geometries),l=o(t.materials),c=o(t.textures),u=o(t.images),f=o(t.shapes),d=o(t.skeletons),h=o(t.animations),m=o(t.nodes);a.length>0&&(i.geometries=a),l.length>0&&(i.materials=l),c.length>0&&(i.textures=c),u.length>0&&(i.images=u),f.length>0&&(i.shapes=f),d.length>0&&(i.skeletons=d),h.length>0&&(i.animations=h),m.length>0&&(i.nodes=m)}return i.object=s,i;function o(a){let l=[];for(let c in a){let u=a[c];delete u.metadata,l.push(u)}return l}}clone(t){return new this.constructor().copy(this,t)}copy(t,e=!0){if(this.name=t.name,this.up.copy(t.up),this.position.copy(t.position),this.rotation.order=t.rotation.order,this.quaternion.copy(t.quaternion),this.scale.copy(t.scale),this.pivot=t.pivot!==null?t.pivot.clone():null,this.matrix.copy(t.matrix),this.matrixWorld.copy(t.matrixWorld),this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrixWorldAutoUpdate=t.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=t.matrixWorldNeedsUpdate,this.layers.mask=t.layers.mask,this.visible=t.visible,this.castShadow=t.castShadow,this.receiveShadow=t.receiveShadow,this.frustumCulled=t.frustumCulled,this.renderOrder=t.renderOrder,this.static=t.static,this.animations=t.animations.slice(),this.userData=JSON.parse(JSON.stringify(t.userData)),e===!0)for(let i=0;i<t.children.length;i++){let s=t.children[i];this.add(s.clone())}return this}dispose(){this.dispatchEvent({type:"dispose"})}};Ye.DEFAULT_UP=new N(0,1,0);Ye.DEFAULT_MATRIX_AUTO_UPDATE=!0;Ye.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;var ri=class extends Ye{constructor(){super(),this.isGroup=!0,this.type="Group"}},K_={type:"move"},gr=class{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new ri,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new ri,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new N,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new N),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new ri,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new N,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new N,this._grip.eventsEnabled=!1),this._grip}dispatchEvent(t){return this._targetRay!==null&&this._targetRay.dispatchEvent(t),this._grip!==null&&this._grip.dispatchEvent(t),this._hand!==null&&this._hand.dispatchEvent(t),this}connect(t){if(t&&t.hand){let e=this._hand;if(e)for(let i of t.hand.values())this._getHandJoint(e,i)}return this.dispatchEvent({type:"connected",data:t}),this}disconnect(t){return this.dispatchEvent({type:"disconnected",data:t}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(t,e,i){let s=null,r=null,o=null,a=this._targetRay,l=this._grip,c=this._hand;if(t&&e.session.visibilityState!=="visible-blurred"){if(c&&t.hand){o=!0;for(let y of t.hand.values()){let g=e.getJointPose(y,i),p=this._getHandJoint(c,y);g!==null&&(p.matrix.fromArray(g.transform.matrix),p.matrix.decompose(p.position,p.quaternion,p.scale),p.matrixWorldNeedsUpdate=!0,p.jointRadius=g.radius),p.visible=g!==null}let u=c.joints["index-finger-tip"],f=c.joints["thumb-tip"],d=u.position.distanceTo(f.position),h=.02,m=.005;c.inputState.pinching&&d>h+m?(c.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:t.handedness,target:this})):!c.inputState.pinching&&d<=h-m&&(c.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:t.handedness,target:this}))}else l!==null&&t.gripSpace&&(r=e.getPose(t.gripSpace,i),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.quaternion,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1,l.eventsEnabled&&l.dispatchEvent({type:"gripUpdated",data:t,target:this})));a!==null&&(s=e.getPose(t.targetRaySpace,i),s===null&&r!==null&&(s=r),s!==null&&(a.matrix.fromArray(s.transform.matrix),a.matrix.decompose(a.position,a.quaternion,a.scale),a.matrixWorldNeedsUpdate=!0,s.linearVelocity?(a.hasLinearVelocity=!0,a.linearVelocity.copy(s.linearVelocity)):a.hasLinearVelocity=!1,s.angularVelocity?(a.hasAngularVelocity=!0,a.angularVelocity.copy(s.angularVelocity)):a.hasAngularVelocity=!1,this.dispatchEvent(K_)))}return a!==null&&(a.visible=s!==null),l!==null&&(l.visible=r!==null),c!==null&&(c.visible=o!==null),this}_getHandJoint(t,e){if(t.joints[e.jointName]===void 0){let i=new ri;i.matrixAutoUpdate=!1,i.visible=!1,t.joints[e.jointName]=i,t.add(i)}return t.joints[e.jointName]}},km={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},Bi={h:0,s:0,l:0},$a={h:0,s:0,l:0};function ih(n,t,e){return e<0&&(e+=1),e>1&&(e-=1),e<1/6?n+(t-n)*6*e:e<1/2?t:e<2/3?n+(t-n)*6*(2/3-e):n}var kt=class{constructor(t,e,i){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(t,e,i)}set(t,e,i){if(e===void 0&&i===void 0){let s=t;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(t,e,i);return this}setScalar(t){return this.r=t,this.g=t,this.b=t,this}setHex(t,e=wn){return t=Math.floor(t),this.r=(t>>16&255)/255,this.g=(t>>8&255)/255,this.b=(t&255)/255,Jt.colorSpaceToWorking(this,e),this}setRGB(t,e,i,s=Jt.workingColorSpace){return this.r=t,this.g=e,this.b=i,Jt.colorSpaceToWorking(this,s),this}setHSL(t,e,i,s=Jt.workingColorSpace){if(t=sf(t,1),e=Vt(e,0,1),i=Vt(i,0,1),e===0)this.r=this.g=this.b=i;else{let r=i<=.5?i*(1+e):i+e-i*e,o=2*i-r;this.r=ih(o,r,t+1/3),this.g=ih(o,r,t),this.b=ih(o,r,t-1/3)}return Jt.colorSpaceToWorking(this,s),this}setStyle(t,e=wn){function i(r){r!==void 0&&parseFloat(r)<1&&Rt("Color: Alpha component of "+t+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(t)){let r,o=s[1],a=s[2];switch(o){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return i(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,e);if(r=/^\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return i(r[4]),this.setRGB(Math.min(100,parseFloat(r[1]))/100,Math.min(100,parseFloat(r[2]))/100,Math.min(100,parseFloat(r[3]))/100,e);break;case"hsl":case"hsla":if(r=/^\s*([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return i(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,e);break;default:Rt("Color: Unknown color model "+t)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(t)){let r=s[1],o=r.length;if(o===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,e);if(o===6)return this.setHex(parseInt(r,16),e);Rt("Color: Invalid hex color "+t)}else if(t&&t.length>0)return this.setColorName(t,e);return this}setColorName(t,e=wn){let i=km[t.toLowerCase()];return i!==void 0?this.setHex(i,e):Rt("Color: Unknown color "+t),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(t){return this.r=t.r,this.g=t.g,this.b=t.b,this}copySRGBToLinear(t){return this.r=Si(t.r),this.g=Si(t.g),this.b=Si(t.b),this}copyLinearToSRGB(t){return this.r=cr(t.r),this.g=cr(t.g),this.b=cr(t.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(t=wn){return Jt.workingToColorSpace(rn.copy(this),t),Math.round(Vt(rn.r*255,0,255))*65536+Math.round(Vt(rn.g*255,0,255))*256+Math.round(Vt(rn.b*255,0,255))}getHexString(t=wn){return("000000"+this.getHex(t).toString(16)).slice(-6)}getHSL(t,e=Jt.workingColorSpace){Jt.workingToColorSpace(rn.copy(this),e);let i=rn.r,s=rn.g,r=rn.b,o=Math.max(i,s,r),a=Math.min(i,s,r),l,c,u=(a+o)/2;if(a===o)l=0,c=0;else{let f=o-a;switch(c=u<=.5?f/(o+a):f/(2-o-a),o){case i:l=(s-r)/f+(s<r?6:0);break;case s:l=(r-i)/f+2;break;case r:l=(i-s)/f+4;break}l/=6}return t.h=l,t.s=c,t.l=u,t}getRGB(t,e=Jt.workingColorSpace){return Jt.workingToColorSpace(rn.copy(this),e),t.r=rn.r,t.g=rn.g,t.b=rn.b,t}getStyle(t=wn){Jt.workingToColorSpace(rn.copy(this),t);let e=rn.r,i=rn.g,s=rn.b;return t!==wn?`color(${t} ${e.toFixed(3)} ${i.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(e*255)},${Math.round(i*255)},${Math.round(s*255)})`}offsetHSL(t,e,i){return this.getHSL(Bi),this.setHSL(Bi.h+t,Bi.s+e,Bi.l+i)}add(t){return this.r+=t.r,this.g+=t.g,this.b+=t.b,this}addColors(t,e){return this.r=t.r+e.r,this.g=t.g+e.g,this.b=t.b+e.b,this}addScalar(t){return this.r+=t,this.g+=t,this.b+=t,this}sub(t){return this.r=Math.max(0,this.r-t.r),this.g=Math.max(0,this.g-t.g),this.b=Math.max(0,this.b-t.b),this}multiply(t){return this.r*=t.r,this.g*=t.g,this.b*=t.b,this}multiplyScalar(t){return this.r*=t,this.g*=t,this.b*=t,this}lerp(t,e){return this.r+=(t.r-this.r)*e,this.g+=(t.g-this.g)*e,this.b+=(t.b-this.b)*e,this}lerpColors(t,e,i){return this.r=t.r+(e.r-t.r)*i,this.g=t.g+(e.g-t.g)*i,this.b=t.b+(e.b-t.b)*i,this}lerpHSL(t,e){this.getHSL(Bi),t.getHSL($a);let i=fo(Bi.h,$a.h,e),s=fo(Bi.s,$a.s,e),r=fo(Bi.l,$a.l,e);return this.setHSL(i,s,r),this}setFromVector3(t){return this.r=t.x,this.g=t.y,this.b=t.z,this}applyMatrix3(t){let e=this.r,i=this.g,s=this.b,r=t.elements;return this.r=r[0]*e+r[3]*i+r[6]*s,this.g=r[1]*e+r[4]*i+r[7]*s,this.b=r[2]*e+r[5]*i+r[8]*s,this}equals(t){return t.r===this.r&&t.g===this.g&&t.b===this.b}fromArray(t,e=0){return this.r=t[e],this.g=t[e+1],this.b=t[e+2],this}toArray(t=[],e=0){return t[e]=this.r,t[e+1]=this.g,t[e+2]=this.b,t}fromBufferAttribute(t,e){return this.r=t.getX(e),this.g=t.getY(e),this.b=t.getZ(e),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}},rn=new kt;kt.NAMES=km;var Mo=class extends Ye{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new Ti,this.environmentIntensity=1,this.environmentRotation=new Ti,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(t,e){return super.copy(t,e),this.background=t.background!==null?t.background.clone():null,this.environment=t.environment!==null?t.environment.clone():null,this.fog=t.fog!==null?t.fog.clone():null,this.backgroundBlurriness=t.backgroundBlurriness,this.backgroundIntensity=t.backgroundIntensity,this.backgroundRotation.copy(t.backgroundRotation),this.environmentIntensity=t.environmentIntensity,this.environmentRotation.copy(t.environmentRotation),this.overrideMaterial=t.overrideMaterial!==null?t.overrideMaterial.clone():null,this.matrixAutoUpdate=t.matrixAutoUpdate,this}toJSON(t){let e=super.toJSON(t);return this.fog!==null&&(e.object.fog=this.fog.toJSON()),e.object.backgroundBlurriness=this.backgroundBlurriness,e.object.backgroundIntensity=this.backgroundIntensity,e.object.backgroundRotation=this.backgroundRotation.toArray(),e.object.environmentIntensity=this.environmentIntensity,e.object.environmentRotation=this.environmentRotation.toArray(),e}},Yn=new N,yi=new N,sh=new N,xi=new N,Qs=new N,tr=new N,Ep=new N,rh=new N,oh=new N,ah=new N,lh=new Se,ch=new Se,uh=new Se,Gi=class n{constructor(t=new N,e=new N,i=new N){this.a=t,this.b=e,this.c=i}static getNormal(t,e,i,s){s.subVectors(i,e),Yn.subVectors(t,e),s.cross(Yn);let r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(t,e,i,s,r){Yn.subVectors(s,e),yi.subVectors(i,e),sh.subVectors(t,e);let o=Yn.dot(Yn),a=Yn.dot(yi),l=Yn.dot(sh),c=yi.dot(yi),u=yi.dot(sh),f=o*c-a*a;if(f===0)return r.set(0,0,0),null;let d=1/f,h=(c*l-a*u)*d,m=(o*u-a*l)*d;return r.set(1-h-m,m,h)}static containsPoint(t,e,i,s){return this.getBarycoord(t,e,i,s,xi)===null?!1:xi.x>=0&&xi.y>=0&&xi.x+xi.y<=1}static getInterpolation(t,e,i,s,r,o,a,l){return this.getBarycoord(t,e,i,s,xi)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,xi.x),l.addScaledVector(o,xi.y),l.addScaledVector(a,xi.z),l)}static getInterpolatedAttribute(t,e,i,s,r,o){return lh.setScalar(0),ch.setScalar(0),uh.setScalar(0),lh.fromBufferAttribute(t,e),ch.fromBufferAttribute(t,i),uh.fromBufferAttribute(t,s),o.setScalar(0),o.addScaledVector(lh,r.x),o.addScaledVector(ch,r.y),o.addScaledVector(uh,r.z),o}static isFrontFacing(t,e,i,s){return Yn.subVectors(i,e),yi.subVectors(t,e),Yn.cross(yi).dot(s)<0}set(t,e,i){return this.a.copy(t),this.b.copy(e),this.c.copy(i),this}setFromPointsAndIndices(t,e,i,s){return this.a.copy(t[e]),this.b.copy(t[i]),this.c.copy(t[s]),this}setFromAttributeAndIndices(t,e,i,s){return this.a.fromBufferAttribute(t,e),this.b.fromBufferAttribute(t,i),this.c.fromBufferAttribute(t,s),this}clone(){return new this.constructor().copy(this)}copy(t){return this.a.copy(t.a),this.b.copy(t.b),this.c.copy(t.c),this}getArea(){return Yn.subVectors(this.c,this.b),yi.subVectors(this.a,this.b),Yn.cross(yi).length()*.5}getMidpoint(t){return t.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(t){return n.getNormal(this.a,this.b,this.c,t)}getPlane(t){return t.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(t,e){return n.getBarycoord(t,this.a,this.b,this.c,e)}getInterpolation(t,e,i,s,r){return n.getInterpolation(t,this.a,this.b,this.c,e,i,s,r)}containsPoint(t){return n.containsPoint(t,this.a,this.b,this.c)}isFrontFacing(t){return n.isFrontFacing(this.a,this.b,this.c,t)}intersectsBox(t){return t.intersectsTriangle(this)}closestPointToPoint(t,e){let i=this.a,s=this.b,r=this.c,o,a;Qs.subVectors(s,i),tr.subVectors(r,i),rh.subVectors(t,i);let l=Qs.dot(rh),c=tr.dot(rh);if(l<=0&&c<=0)return e.copy(i);oh.subVectors(t,s);let u=Qs.dot(oh),f=tr.dot(oh);if(u>=0&&f<=u)return e.copy(s);let d=l*f-u*c;if(d<=0&&l>=0&&u<=0&&l-u>0)return o=l/(l-u),e.copy(i).addScaledVector(Qs,o);ah.subVectors(t,r);let h=Qs.dot(ah),m=tr.dot(ah);if(m>=0&&h<=m)return e.copy(r);let y=h*c-l*m;if(y<=0&&c>=0&&m<=0)return a=c/(c-m),e.copy(i).addScaledVector(tr,a);let g=u*m-h*f;if(g<=0&&f-u>=0&&h-m>=0)return Ep.subVectors(r,s),a=(f-u)/(f-u+(h-m)),e.copy(s).addScaledVector(Ep,a);let p=1/(g+y+d);return o=y*p,a=d*p,e.copy(i).addScaledVector(Qs,o).addScaledVector(tr,a)}equals(t){return t.a.equals(this.a)&&t.b.equals(this.b)&&t.c.equals(this.c)}},oi=class{constructor(t=new N(1/0,1/0,1/0),e=new N(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=t,this.max=e}set(t,e){return this.min.copy(t),this.max.copy(e),this}setFromArray(t){this.makeEmpty();for(let e=0,i=t.length;e<i;e+=3)this.expandByPoint($n.fromArray(t,e));return this}setFromBufferAttribute(t){this.makeEmpty();for(let e=0,i=t.count;e<i;e++)this.expandByPoint($n.fromBufferAttribute(t,e));return this}setFromPoints(t){this.makeEmpty();for(let e=0,i=t.length;e<i;e++)this.expandByPoint(t[e]);return this}setFromCenterAndSize(t,e){let i=$n.copy(e).multiplyScalar(.5);return this.min.copy(t).sub(i),this.max.copy(t).add(i),this}setFromObject(t,e=!1){return this.makeEmpty(),this.expandByObject(t,e)}clone(){return new this.constructor().copy(this)}copy(t){return this.min.copy(t.min),this.max.copy(t.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(t){return this.isEmpty()?t.set(0,0,0):t.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(t){return this.isEmpty()?t.set(0,0,0):t.subVectors(this.max,this.min)}expandByPoint(t){return this.min.min(t),this.max.max(t),this}expandByVector(t){return this.min.sub(t),this.max.add(t),this}expandByScalar(t){return this.min.addScalar(-t),this.max.addScalar(t),this}expandByObject(t,e=!1){t.updateWorldMatrix(!1,!1);let i=t.geometry;if(i!==void 0){let r=i.getAttribute("position");if(e===!0&&r!==void 0&&t.isInstancedMesh!==!0&&t.isBatchedMesh!==!0)for(let o=0,a=r.count;o<a;o++)t.isMesh===!0?t.getVertexPosition(o,$n):$n.fromBufferAttribute(r,o),$n.applyMatrix4(t.matrixWorld),this.expandByPoint($n);else t.boundingBox!==void 0?(t.boundingBox===null&&t.computeBoundingBox(),Za.copy(t.boundingBox)):(i.boundingBox===null&&i.computeBoundingBox(),Za.copy(i.boundingBox)),Za.applyMatrix4(t.matrixWorld),this.union(Za)}let s=t.children;for(let r=0,o=s.length;r<o;r++)this.expandByObject(s[r],e);return this}containsPoint(t){return t.x>=this.min.x&&t.x<=this.max.x&&t.y>=this.min.y&&t.y<=this.max.y&&t.z>=this.min.z&&t.z<=this.max.z}containsBox(t){return this.min.x<=t.min.x&&t.max.x<=this.max.x&&this.min.y<=t.min.y&&t.max.y<=this.max.y&&this.min.z<=t.min.z&&t.max.z<=this.max.z}getParameter(t,e){return e.set((t.x-this.min.x)/(this.max.x-this.min.x),(t.y-this.min.y)/(this.max.y-this.min.y),(t.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(t){return t.max.x>=this.min.x&&t.min.x<=this.max.x&&t.max.y>=this.min.y&&t.min.y<=this.max.y&&t.max.z>=this.min.z&&t.min.z<=this.max.z}intersectsSphere(t){return this.clampPoint(t.center,$n),$n.distanceToSquared(t.center)<=t.radius*t.radius}intersectsPlane(t){let e,i;return t.normal.x>0?(e=t.normal.x*this.min.x,i=t.normal.x*this.max.x):(e=t.normal.x*this.max.x,i=t.normal.x*this.min.x),t.normal.y>0?(e+=t.normal.y*this.min.y,i+=t.normal.y*this.max.y):(e+=t.normal.y*this.max.y,i+=t.normal.y*this.min.y),t.normal.z>0?(e+=t.normal.z*this.min.z,i+=t.normal.z*this.max.z):(e+=t.normal.z*this.max.z,i+=t.normal.z*this.min.z),e<=-t.constant&&i>=-t.constant}intersectsTriangle(t){if(this.isEmpty())return!1;this.getCenter(io),Ja.subVectors(this.max,io),er.subVectors(t.a,io),nr.subVectors(t.b,io),ir.subVectors(t.c,io),ki.subVectors(nr,er),zi.subVectors(ir,nr),_s.subVectors(er,ir);let e=[0,-ki.z,ki.y,0,-zi.z,zi.y,0,-_s.z,_s.y,ki.z,0,-ki.x,zi.z,0,-zi.x,_s.z,0,-_s.x,-ki.y,ki.x,0,-zi.y,zi.x,0,-_s.y,_s.x,0];return!hh(e,er,nr,ir,Ja)||(e=[1,0,0,0,1,0,0,0,1],!hh(e,er,nr,ir,Ja))?!1:(Ka.crossVectors(ki,zi),e=[Ka.x,Ka.y,Ka.z],hh(e,er,nr,ir,Ja))}clampPoint(t,e){return e.copy(t).clamp(this.min,this.max)}distanceToPoint(t){return this.clampPoint(t,$n).distanceTo(t)}getBoundingSphere(t){return this.isEmpty()?t.makeEmpty():(this.getCenter(t.center),t.radius=this.getSize($n).length()*.5),t}intersect(t){return this.min.max(t.min),this.max.min(t.max),this.isEmpty()&&this.makeEmpty(),this}union(t){return this.min.min(t.min),this.max.max(t.max),this}applyMatrix4(t){return this.isEmpty()?this:(bi[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(t),bi[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(t),bi[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(t),bi[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(t),bi[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(t),bi[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(t),bi[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(t),bi[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(t),this.setFromPoints(bi),this)}translate(t){return this.min.add(t),this.max.add(t),this}equals(t){return t.min.equals(this.min)&&t.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(t){return this.min.fromArray(t.min),this.max.fromArray(t.max),this}},bi=[new N,new N,new N,new N,new N,new N,new N,new N],$n=new N,Za=new oi,er=new N,nr=new N,ir=new N,ki=new N,zi=new N,_s=new N,io=new N,Ja=new N,Ka=new N,vs=new N;function hh(n,t,e,i,s){for(let r=0,o=n.length-3;r<=o;r+=3){vs.fromArray(n,r);let a=s.x*Math.abs(vs.x)+s.y*Math.abs(vs.y)+s.z*Math.abs(vs.z),l=t.dot(vs),c=e.dot(vs),u=i.dot(vs);if(Math.max(-Math.max(l,c,u),Math.min(l,c,u))>a)return!1}return!0}var De=new N,ja=new rt,j_=0,Oe=class extends Zn{constructor(t,e,i=!1){if(super(),Array.isArray(t))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:j_++}),this.name="",this.array=t,this.itemSize=e,this.count=t!==void 0?t.length/e:0,this.normalized=i,this.usage=Dm,this.updateRanges=[],this.gpuType=kn,this.version=0,this._normalizationScale=t!==void 0?of(t):void 0}onUploadCallback(){}set needsUpdate(t){t===!0&&this.version++}setUsage(t){return this.usage=t,this}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}copy(t){return this.name=t.name,this.array=new t.array.constructor(t.array),this.itemSize=t.itemSize,this.count=t.count,this.normalized=t.normalized,this.usage=t.usage,this.gpuType=t.gpuType,this._normalizationScale=t._normalizationScale,this}copyAt(t,e,i){t*=this.itemSize,i*=e.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[t+s]=e.array[i+s];return this}copyArray(t){return this.array.set(t),this}applyMatrix3(t){if(this.itemSize===2)for(let e=0,i=this.count;e<i;e++)ja.fromBufferAttribute(this,e),ja.applyMatrix3(t),this.setXY(e,ja.x,ja.y);else if(this.itemSize===3)for(let e=0,i=this.count;e<i;e++)De.fromBufferAttribute(this,e),De.applyMatrix3(t),this.setXYZ(e,De.x,De.y,De.z);return this}applyMatrix4(t){for(let e=0,i=this.count;e<i;e++)De.fromBufferAttribute(this,e),De.applyMatrix4(t),this.setXYZ(e,De.x,De.y,De.z);return this}applyNormalMatrix(t){for(let e=0,i=this.count;e<i;e++)De.fromBufferAttribute(this,e),De.applyNormalMatrix(t),this.setXYZ(e,De.x,De.y,De.z);return this}transformDirection(t){for(let e=0,i=this.count;e<i;e++)De.fromBufferAttribute(this,e),De.transformDirection(t),this.setXYZ(e,De.x,De.y,De.z);return this}set(t,e=0){return this.array.set(t,e),this}getComponent(t,e){let i=this.array[t*this.itemSize+e];return this.normalized&&(i=this._denormalize(i)),i}setComponent(t,e,i){return this.normalized&&(i=this._normalize(i)),this.array[t*this.itemSize+e]=i,this}getX(t){let e=this.array[t*this.itemSize];return this.normalized&&(e=this._denormalize(e)),e}setX(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize]=e,this}getY(t){let e=this.array[t*this.itemSize+1];return this.normalized&&(e=this._denormalize(e)),e}setY(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+1]=e,this}getZ(t){let e=this.array[t*this.itemSize+2];return this.normalized&&(e=this._denormalize(e)),e}setZ(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+2]=e,this}getW(t){let e=this.array[t*this.itemSize+3];return this.normalized&&(e=this._denormalize(e)),e}setW(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+3]=e,this}setXY(t,e,i){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i)),this.array[t+0]=e,this.array[t+1]=i,this}setXYZ(t,e,i,s){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s)),this.array[t+0]=e,this.array[t+1]=i,this.array[t+2]=s,this}setXYZW(t,e,i,s,r){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s),r=this._normalize(r)),this.array[t+0]=e,this.array[t+1]=i,this.array[t+2]=s,this.array[t+3]=r,this}onUpload(t){return this.onUploadCallback=t,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){let t={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return t.name=this.name,t.usage=this.usage,t.gpuType=this.gpuType,t}dispose(){this.dispatchEvent({type:"dispose"})}_denormalize(t){let e=this._normalizationScale;return e!==void 0?Math.max(t/e,-1):Om(t,this.array)}_normalize(t){let e=this._normalizationScale;return e!==void 0?Math.round(t*e):Bm(t,this.array)}};var So=class extends Oe{constructor(t,e,i){super(new Uint16Array(t),e,i)}};var wo=class extends Oe{constructor(t,e,i){super(new Uint32Array(t),e,i)}};var Xt=class extends Oe{constructor(t,e,i){super(new Float32Array(t),e,i)}},Q_=new oi,so=new N,fh=new N,ai=class{constructor(t=new N,e=-1){this.isSphere=!0,this.center=t,this.radius=e}set(t,e){return this.center.copy(t),this.radius=e,this}setFromPoints(t,e){let i=this.center;e!==void 0?i.copy(e):Q_.setFromPoints(t).getCenter(i);let s=0;for(let r=0,o=t.length;r<o;r++)s=Math.max(s,i.distanceToSquared(t[r]));return this.radius=Math.sqrt(s),this}copy(t){return this.center.copy(t.center),this.radius=t.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(t){return t.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(t){return t.distanceTo(this.center)-this.radius}intersectsSphere(t){let e=this.radius+t.radius;return t.center.distanceToSquared(this.center)<=e*e}intersectsBox(t){return t.intersectsSphere(this)}intersectsPlane(t){return Math.abs(t.distanceToPoint(this.center))<=this.radius}clampPoint(t,e){let i=this.center.distanceToSquared(t);return e.copy(t),i>this.radius*this.radius&&(e.sub(this.center).normalize(),e.multiplyScalar(this.radius).add(this.center)),e}getBoundingBox(t){return this.isEmpty()?(t.makeEmpty(),t):(t.set(this.center,this.center),t.expandByScalar(this.radius),t)}applyMatrix4(t){return this.center.applyMatrix4(t),this.radius=this.radius*t.getMaxScaleOnAxis(),this}translate(t){return this.center.add(t),this}expandByPoint(t){if(this.isEmpty())return this.center.copy(t),this.radius=0,this;so.subVectors(t,this.center);let e=so.lengthSq();if(e>this.radius*this.radius){let i=Math.sqrt(e),s=(i-this.radius)*.5;this.center.addScaledVector(so,s/i),this.radius+=s}return this}union(t){return t.isEmpty()?this:this.isEmpty()?(this.copy(t),this):(this.center.equals(t.center)===!0?this.radius=Math.max(this.radius,t.radius):(fh.subVectors(t.center,this.center).setLength(t.radius),this.expandByPoint(so.copy(t.center).add(fh)),this.expandByPoint(so.copy(t.center).sub(fh))),this)}equals(t){return t.center.equals(this.center)&&t.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(t){return this.radius=t.radius,this.center.fromArray(t.center),this}},tv=0,On=new Qt,dh=new Ye,sr=new N,Sn=new oi,ro=new oi,Xe=new N,ce=class n extends Zn{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:tv++}),this.uuid=Cs(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.indirectOffset=0,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={},this._transformed=!1}getIndex(){return this.index}setIndex(t){return Array.isArray(t)?this.index=new(T_(t)?wo:So)(t,1):this.index=t,this}setIndirect(t,e=0){return this.indirect=t,this.indirectOffset=e,this}getIndirect(){return this.indirect}getAttribute(t){return this.attributes[t]}setAttribute(t,e){return this.attributes[t]=e,this}deleteAttribute(t){return delete this.attributes[t],this}hasAttribute(t){return this.attributes[t]!==void 0}addGroup(t,e,i=0){this.groups.push({start:t,count:e,materialIndex:i})}clearGroups(){this.groups=[]}setDrawRange(t,e){this.drawRange.start=t,this.drawRange.count=e}applyMatrix4(t){let e=this.attributes.position;e!==void 0&&(e.applyMatrix4(t),e.needsUpdate=!0);let i=this.attributes.normal;if(i!==void 0){let r=new Ft().getNormalMatrix(t);i.applyNormalMatrix(r),i.needsUpdate=!0}let s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(t),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this._transformed=!0,this}applyQuaternion(t){return On.makeRotationFromQuaternion(t),this.applyMatrix4(On),this}rotateX(t){return On.makeRotationX(t),this.applyMatrix4(On),this}rotateY(t){return On.makeRotationY(t),this.applyMatrix4(On),this}rotateZ(t){return On.makeRotationZ(t),this.applyMatrix4(On),this}translate(t,e,i){return On.makeTranslation(t,e,i),this.applyMatrix4(On),this}scale(t,e,i){return On.makeScale(t,e,i),this.applyMatrix4(On),this}lookAt(t){return dh.lookAt(t),dh.updateMatrix(),this.applyMatrix4(dh.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(sr).negate(),this.translate(sr.x,sr.y,sr.z),this}setFromPoints(t){let e=this.getAttribute("position");if(e===void 0){let i=[];for(let s=0,r=t.length;s<r;s++){let o=t[s];i.push(o.x,o.y,o.z||0)}this.setAttribute("position",new Xt(i,3))}else{let i=Math.min(t.length,e.count);for(let s=0;s<i;s++){let r=t[s];e.setXYZ(s,r.x,r.y,r.z||0)}t.length>e.count&&Rt("BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),e.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new oi);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Nt("BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new N(-1/0,-1/0,-1/0),new N(1/0,1/0,1/0));return}if(t!==void 0){if(this.boundingBox.setFromBufferAttribute(t),e)for(let i=0,s=e.length;i<s;i++){let r=e[i];Sn.setFromBufferAttribute(r),this.morphTargetsRelative?(Xe.addVectors(this.boundingBox.min,Sn.min),this.boundingBox.expandByPoint(Xe),Xe.addVectors(this.boundingBox.max,Sn.max),this.boundingBox.expandByPoint(Xe)):(this.boundingBox.expandByPoint(Sn.min),this.boundingBox.expandByPoint(Sn.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&Nt('BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new ai);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Nt("BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new N,1/0);return}if(t){let i=this.boundingSphere.center;if(Sn.setFromBufferAttribute(t),e)for(let r=0,o=e.length;r<o;r++){let a=e[r];ro.setFromBufferAttribute(a),this.morphTargetsRelative?(Xe.addVectors(Sn.min,ro.min),Sn.expandByPoint(Xe),Xe.addVectors(Sn.max,ro.max),Sn.expandByPoint(Xe)):(Sn.expandByPoint(ro.min),Sn.expandByPoint(ro.max))}Sn.getCenter(i);let s=0;for(let r=0,o=t.count;r<o;r++)Xe.fromBufferAttribute(t,r),s=Math.max(s,i.distanceToSquared(Xe));if(e)for(let r=0,o=e.length;r<o;r++){let a=e[r],l=this.morphTargetsRelative;for(let c=0,u=a.count;c<u;c++)Xe.fromBufferAttribute(a,c),l&&(sr.fromBufferAttribute(t,c),Xe.add(sr)),s=Math.max(s,i.distanceToSquared(Xe))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&Nt('BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){let t=this.index,e=this.attributes;if(t===null||e.position===void 0||e.normal===void 0||e.uv===void 0){Nt("BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}let i=e.position,s=e.normal,r=e.uv,o=this.getAttribute("tangent");(o===void 0||o.count!==i.count)&&(o=new Oe(new Float32Array(4*i.count),4),this.setAttribute("tangent",o));let a=[],l=[],c=new Uint8Array(i.count);for(let D=0;D<i.count;D++)a[D]=new N,l[D]=new N;let u=new N,f=new N,d=new N,h=new rt,m=new rt,y=new rt,g=new N,p=new N;function v(D,R,P){c[D]=c[R]=c[P]=1,u.fromBufferAttribute(i,D),f.fromBufferAttribute(i,R),d.fromBufferAttribute(i,P),h.fromBufferAttribute(r,D),m.fromBufferAttribute(r,R),y.fromBufferAttribute(r,P),f.sub(u),d.sub(u),m.sub(h),y.sub(h);let F=1/(m.x*y.y-y.x*m.y);isFinite(F)&&(g.copy(f).multiplyScalar(y.y).addScaledVector(d,-m.y).multiplyScalar(F),p.copy(d).multiplyScalar(m.x).addScaledVector(f,-y.x).multiplyScalar(F),a[D].add(g),a[R].add(g),a[P].add(g),l[D].add(p),l[R].add(p),l[P].add(p))}let M=this.groups;M.length===0&&(M=[{start:0,count:t.count}]);for(let D=0,R=M.length;D<R;++D){let P=M[D],F=P.start,k=P.count;for(let I=F,W=F+k;I<W;I+=3)v(t.getX(I+0),t.getX(I+1),t.getX(I+2))}let b=new N,E=new N,A=new N,x=new N;function T(D){A.fromBufferAttribute(s,D),x.copy(A);let R=a[D];b.copy(R),b.sub(A.multiplyScalar(A.dot(R))).normalize(),E.crossVectors(x,R);let F=E.dot(l[D])<0?-1:1;o.setXYZW(D,b.x,b.y,b.z,F)}for(let D=0,R=i.count;D<R;++D)c[D]&&T(D);this._transformed=!0}computeVertexNormals(){let t=this.index,e=this.getAttribute("position");if(e!==void 0){let i=this.getAttribute("normal");if(i===void 0||i.count!==e.count)i=new Oe(new Float32Array(e.count*3),3),this.setAttribute("normal",i);else for(let d=0,h=i.count;d<h;d++)i.setXYZ(d,0,0,0);let s=new N,r=new N,o=new N,a=new N,l=new N,c=new N,u=new N,f=new N;if(t)for(let d=0,h=t.count;d<h;d+=3){let m=t.getX(d+0),y=t.getX(d+1),g=t.getX(d+2);s.fromBufferAttribute(e,m),r.fromBufferAttribute(e,y),o.fromBufferAttribute(e,g),u.subVectors(o,r),f.subVectors(s,r),u.cross(f),a.fromBufferAttribute(i,m),l.fromBufferAttribute(i,y),c.fromBufferAttribute(i,g),a.add(u),l.add(u),c.add(u),i.setXYZ(m,a.x,a.y,a.z),i.setXYZ(y,l.x,l.y,l.z),i.setXYZ(g,c.x,c.y,c.z)}else for(let d=0,h=e.count;d<h;d+=3)s.fromBufferAttribute(e,d+0),r.fromBufferAttribute(e,d+1),o.fromBufferAttribute(e,d+2),u.subVectors(o,r),f.subVectors(s,r),u.cross(f),i.setXYZ(d+0,u.x,u.y,u.z),i.setXYZ(d+1,u.x,u.y,u.z),i.setXYZ(d+2,u.x,u.y,u.z);this.normalizeNormals(),i.needsUpdate=!0}}normalizeNormals(){let t=this.attributes.normal;for(let e=0,i=t.count;e<i;e++)Xe.fromBufferAttribute(t,e),Xe.normalize(),t.setXYZ(e,Xe.x,Xe.y,Xe.z)}toNonIndexed(){function t(a,l){let c=a.array,u=a.itemSize,f=a.normalized,d=new c.constructor(l.length*u),h=0,m=0;for(let y=0,g=l.length;y<g;y++){a.isInterleavedBufferAttribute?h=l[y]*a.data.stride+a.offset:h=l[y]*u;for(let p=0;p<u;p++)d[m++]=c[h++]}return new Oe(d,u,f)}if(this.index===null)return Rt("BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;let e=new n,i=this.index.array,s=this.attributes;for(let a in s){let l=s[a],c=t(l,i);e.setAttribute(a,c)}let r=this.morphAttributes;for(let a in r){let l=[],c=r[a];for(let u=0,f=c.length;u<f;u++){let d=c[u],h=t(d,i);l.push(h)}e.morphAttributes[a]=l}e.morphTargetsRelative=this.morphTargetsRelative;let o=this.groups;for(let a=0,l=o.length;a<l;a++){let c=o[a];e.addGroup(c.start,c.count,c.materialIndex)}return e}toJSON(){let t={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(t.uuid=this.uuid,t.type=this.parameters!==void 0&&this._transformed===!0?"BufferGeometry":this.type,t.name=this.name,Object.keys(this.userData).length>0&&(t.userData=this.userData),this.parameters!==void 0&&this._transformed!==!0){let l=this.parameters;for(let c in l)l[c]!==void 0&&(t[c]=l[c]);return t}t.data={attributes:{}};let e=this.index;e!==null&&(t.data.index={type:e.array.constructor.name,array:Array.prototype.slice.call(e.array)});let i=this.attributes;for(let l in i){let c=i[l];t.data.attributes[l]=c.toJSON(t.data)}let s={},r=!1;for(let l in this.morphAttributes){let c=this.morphAttributes[l],u=[];for(let f=0,d=c.length;f<d;f++){let h=c[f];u.push(h.toJSON(t.data))}u.length>0&&(s[l]=u,r=!0)}r&&(t.data.morphAttributes=s,t.data.morphTargetsRelative=this.morphTargetsRelative);let o=this.groups;o.length>0&&(t.data.groups=JSON.parse(JSON.stringify(o)));let a=this.boundingSphere;return a!==null&&(t.data.boundingSphere=a.toJSON()),t}clone(){return new this.constructor().copy(this)}copy(t){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;let e={};this.name=t.name;let i=t.index;i!==null&&this.setIndex(i.clone());let s=t.attributes;for(let c in s){let u=s[c];this.setAttribute(c,u.clone(e))}let r=t.morphAttributes;for(let c in r){let u=[],f=r[c];for(let d=0,h=f.length;d<h;d++)u.push(f[d].clone(e));this.morphAttributes[c]=u}this.morphTargetsRelative=t.morphTargetsRelative;let o=t.groups;for(let c=0,u=o.length;c<u;c++){let f=o[c];this.addGroup(f.start,f.count,f.materialIndex)}let a=t.boundingBox;a!==null&&(this.boundingBox=a.clone());let l=t.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=t.drawRange.start,this.drawRange.count=t.drawRange.count,this.userData=t.userData,this._transformed=t._transformed,this}dispose(){this.dispatchEvent({type:"dispose"})}};var ph=new N,ev=new N,nv=new Ft,Tn=class{constructor(t=new N(1,0,0),e=0){this.isPlane=!0,this.normal=t,this.constant=e}set(t,e){return this.normal.copy(t),this.constant=e,this}setComponents(t,e,i,s){return this.normal.set(t,e,i),this.constant=s,this}setFromNormalAndCoplanarPoint(t,e){return this.normal.copy(t),this.constant=-e.dot(this.normal),this}setFromCoplanarPoints(t,e,i){let s=ph.subVectors(i,e).cross(ev.subVectors(t,e)).normalize();return this.setFromNormalAndCoplanarPoint(s,t),this}copy(t){return this.normal.copy(t.normal),this.constant=t.constant,this}normalize(){let t=1/this.normal.length();return this.normal.multiplyScalar(t),this.constant*=t,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(t){return this.normal.dot(t)+this.constant}distanceToSphere(t){return this.distanceToPoint(t.center)-t.radius}projectPoint(t,e){return e.copy(t).addScaledVector(this.normal,-this.distanceToPoint(t))}intersectLine(t,e,i=!0){let s=t.delta(ph),r=this.normal.dot(s);if(r===0)return this.distanceToPoint(t.start)===0?e.copy(t.start):null;let o=-(t.start.dot(this.normal)+this.constant)/r;return i===!0&&(o<0||o>1)?null:e.copy(t.start).addScaledVector(s,o)}intersectsLine(t){let e=this.distanceToPoint(t.start),i=this.distanceToPoint(t.end);return e<0&&i>0||i<0&&e>0}intersectsBox(t){return t.intersectsPlane(this)}intersectsSphere(t){return t.intersectsPlane(this)}coplanarPoint(t){return t.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(t,e){let i=e||nv.getNormalMatrix(t),s=this.coplanarPoint(ph).applyMatrix4(t),r=this.normal.applyMatrix3(i).normalize();return this.constant=-s.dot(r),this}translate(t){return this.constant-=t.dot(this.normal),this}equals(t){return t.normal.equals(this.normal)&&t.constant===this.constant}clone(){return new this.constructor().copy(this)}toJSON(){return{normal:this.normal.toArray(),constant:this.constant}}fromJSON(t){return this.normal.fromArray(t.normal),this.constant=t.constant,this}},iv=0,li=class extends Zn{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:iv++}),this.uuid=Cs(),this.name="",this.type="Material",this.blending=Tr,this.side=Qi,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=Fh,this.blendDst=Oh,this.blendEquation=Ts,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new kt(0,0,0),this.blendAlpha=0,this.depthFunc=hr,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=Am,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=xl,this.stencilZFail=xl,this.stencilZPass=xl,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(t){this._alphaTest>0!=t>0&&this.version++,this._alphaTest=t}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(t){if(t!==void 0)for(let e in t){let i=t[e];if(i===void 0){Rt(`Material: parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){Rt(`Material: '${e}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(i):s&&s.isVector2&&i&&i.isVector2||s&&s.isEuler&&i&&i.isEuler||s&&s.isVector3&&i&&i.isVector3?s.copy(i):this[e]=i}}toJSON(t){let e=t===void 0||typeof t=="string";e&&(t={textures:{},images:{}});let i={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};i.uuid=this.uuid,i.type=this.type,i.blending=this.blending,i.side=this.side,i.shadowSide=this.shadowSide,i.vertexColors=this.vertexColors,i.opacity=this.opacity,i.transparent=this.transparent,i.blendSrc=this.blendSrc,i.blendDst=this.blendDst,i.blendEquation=this.blendEquation,i.blendSrcAlpha=this.blendSrcAlpha,i.blendDstAlpha=this.blendDstAlpha,i.blendEquationAlpha=this.blendEquationAlpha,i.blendColor=this.blendColor.getHex(),i.blendAlpha=this.blendAlpha,i.depthFunc=this.depthFunc,i.depthTest=this.depthTest,i.depthWrite=this.depthWrite,i.colorWrite=this.colorWrite,i.clipIntersection=this.clipIntersection,i.clipShadows=this.clipShadows,i.stencilWriteMask=this.stencilWriteMask,i.stencilFunc=this.stencilFunc,i.stencilRef=this.stencilRef,i.stencilFuncMask=this.stencilFuncMask,i.stencilFail=this.stencilFail,i.stencilZFail=this.stencilZFail,i.stencilZPass=this.stencilZPass,i.stencilWrite=this.stencilWrite,i.polygonOffset=this.polygonOffset,i.polygonOffsetFactor=this.polygonOffsetFactor,i.polygonOffsetUnits=this.polygonOffsetUnits,i.dithering=this.dithering,i.alphaTest=this.alphaTest,i.alphaHash=this.alphaHash,i.alphaToCoverage=this.alphaToCoverage,i.premultipliedAlpha=this.premultipliedAlpha,i.forceSinglePass=this.forceSinglePass,i.allowOverride=this.allowOverride,i.visible=this.visible,i.toneMapped=this.toneMapped,i.name=this.name,this.color&&this.color.isColor&&(i.color=this.color.getHex()),this.roughness!==void 0&&(i.roughness=this.roughness),this.metalness!==void 0&&(i.metalness=this.metalness),this.sheen!==void 0&&(i.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(i.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(i.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(i.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&(i.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(i.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(i.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(i.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(i.shininess=this.shininess),this.clearcoat!==void 0&&(i.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(i.clearcoatRoughness=this.clearcoatRoughness),this.diffuseRoughness!==void 0&&(i.diffuseRoughness=this.diffuseRoughness),this.diffuseRoughnessMap&&this.diffuseRoughnessMap.isTexture&&(i.diffuseRoughnessMap=this.diffuseRoughnessMap.toJSON(t).uuid),this.clearcoatMap&&this.clearcoatMap.isTexture&&(i.clearcoatMap=this.clearcoatMap.toJSON(t).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(i.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(t).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(i.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(t).uuid,i.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(i.sheenColorMap=this.sheenColorMap.toJSON(t).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(i.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(t).uuid),this.dispersion!==void 0&&(i.dispersion=this.dispersion),this.retroreflectivity!==void 0&&(i.retroreflectivity=this.retroreflectivity),this.iridescence!==void 0&&(i.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(i.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessMinimum!==void 0&&(i.iridescenceThicknessMinimum=this.iridescenceThicknessMinimum),this.iridescenceThicknessMaximum!==void 0&&(i.iridescenceThicknessMaximum=this.iridescenceThicknessMaximum),this.iridescenceMap&&this.iridescenceMap.isTexture&&(i.iridescenceMap=this.iridescenceMap.toJSON(t).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(i.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(t).uuid),this.anisotropy!==void 0&&(i.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(i.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(i.anisotropyMap=this.anisotropyMap.toJSON(t).uuid),this.map&&this.map.isTexture&&(i.map=this.map.toJSON(t).uuid),this.matcap&&this.matcap.isTexture&&(i.matcap=this.matcap.toJSON(t).uuid),this.alphaMap&&this.alphaMap.isTexture&&(i.alphaMap=this.alphaMap.toJSON(t).uuid),this.lightMap&&this.lightMap.isTexture&&(i.lightMap=this.lightMap.toJSON(t).uuid,i.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(i.aoMap=this.aoMap.toJSON(t).uuid,i.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(i.bumpMap=this.bumpMap.toJSON(t).uuid,i.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(i.normalMap=this.normalMap.toJSON(t).uuid,i.normalMapType=this.normalMapType,i.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(i.displacementMap=this.displacementMap.toJSON(t).uuid,i.displacementScale=this.displacementScale,i.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(i.roughnessMap=this.roughnessMap.toJSON(t).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(i.metalnessMap=this.metalnessMap.toJSON(t).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(i.emissiveMap=this.emissiveMap.toJSON(t).uuid),this.specularMap&&this.specularMap.isTexture&&(i.specularMap=this.specularMap.toJSON(t).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(i.specularIntensityMap=this.specularIntensityMap.toJSON(t).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(i.specularColorMap=this.specularColorMap.toJSON(t).uuid),this.envMap&&this.envMap.isTexture&&(i.envMap=this.envMap.toJSON(t).uuid,this.combine!==void 0&&(i.combine=this.combine)),this.envMapRotation!==void 0&&(i.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(i.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(i.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(i.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(i.gradientMap=this.gradientMap.toJSON(t).uuid),this.transmission!==void 0&&(i.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(i.transmissionMap=this.transmissionMap.toJSON(t).uuid),this.thickness!==void 0&&(i.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(i.thicknessMap=this.thicknessMap.toJSON(t).uuid),this.attenuationDistance!==void 0&&(i.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(i.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(i.size=this.size),this.sizeAttenuation!==void 0&&(i.sizeAttenuation=this.sizeAttenuation),Array.isArray(this.clippingPlanes)&&this.clippingPlanes.length>0&&(i.clippingPlanes=this.clippingPlanes.map(r=>r.toJSON())),this.rotation!==void 0&&(i.rotation=this.rotation),this.depthPacking!==void 0&&(i.depthPacking=this.depthPacking),this.linewidth!==void 0&&(i.linewidth=this.linewidth),this.linecap!==void 0&&(i.linecap=this.linecap),this.linejoin!==void 0&&(i.linejoin=this.linejoin),this.dashSize!==void 0&&(i.dashSize=this.dashSize),this.gapSize!==void 0&&(i.gapSize=this.gapSize),this.scale!==void 0&&(i.scale=this.scale),this.wireframe!==void 0&&(i.wireframe=this.wireframe),this.wireframeLinewidth!==void 0&&(i.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!==void 0&&(i.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!==void 0&&(i.wireframeLinejoin=this.wireframeLinejoin),this.flatShading!==void 0&&(i.flatShading=this.flatShading),this.fog!==void 0&&(i.fog=this.fog),Object.keys(this.userData).length>0&&(i.userData=this.userData);function s(r){let o=[];for(let a in r){let l=r[a];delete l.metadata,o.push(l)}return o}if(e){let r=s(t.textures),o=s(t.images);r.length>0&&(i.textures=r),o.length>0&&(i.images=o)}return i}fromJSON(t,e){if(t.uuid!==void 0&&(this.uuid=t.uuid),t.name!==void 0&&(this.name=t.name),t.color!==void 0&&this.color!==void 0&&this.color.setHex(t.color),t.roughness!==void 0&&(this.roughness=t.roughness),t.metalness!==void 0&&(this.metalness=t.metalness),t.sheen!==void 0&&(this.sheen=t.sheen),t.sheenColor!==void 0&&(this.sheenColor=new kt().setHex(t.sheenColor)),t.sheenRoughness!==void 0&&(this.sheenRoughness=t.sheenRoughness),t.emissive!==void 0&&this.emissive!==void 0&&this.emissive.setHex(t.emissive),t.specular!==void 0&&this.specular!==void 0&&this.specular.setHex(t.specular),t.specularIntensity!==void 0&&(this.specularIntensity=t.specularIntensity),t.specularColor!==void 0&&this.specularColor!==void 0&&this.specularColor.setHex(t.specularColor),t.shininess!==void 0&&(this.shininess=t.shininess),t.clearcoat!==void 0&&(this.clearcoat=t.clearcoat),t.clearcoatRoughness!==void 0&&(this.clearcoatRoughness=t.clearcoatRoughness),t.diffuseRoughness!==void 0&&(this.diffuseRoughness=t.diffuseRoughness),t.dispersion!==void 0&&(this.dispersion=t.dispersion),t.retroreflectivity!==void 0&&(this.retroreflectivity=t.retroreflectivity),t.iridescence!==void 0&&(this.iridescence=t.iridescence),t.iridescenceIOR!==void 0&&(this.iridescenceIOR=t.iridescenceIOR),t.iridescenceThicknessMinimum!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessMinimum),t.iridescenceThicknessMaximum!==void 0&&(this.iridescenceThicknessMaximum=t.iridescenceThicknessMaximum),t.iridescenceThicknessRange!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessRange[0],this.iridescenceThicknessMaximum=t.iridescenceThicknessRange[1]),t.transmission!==void 0&&(this.transmission=t.transmission),t.thickness!==void 0&&(this.thickness=t.thickness),t.attenuationDistance!==void 0&&(this.attenuationDistance=t.attenuationDistance),t.attenuationColor!==void 0&&this.attenuationColor!==void 0&&this.attenuationColor.setHex(t.attenuationColor),t.anisotropy!==void 0&&(this.anisotropy=t.anisotropy),t.anisotropyRotation!==void 0&&(this.anisotropyRotation=t.anisotropyRotation),t.fog!==void 0&&(this.fog=t.fog),t.flatShading!==void 0&&(this.flatShading=t.flatShading),t.blending!==void 0&&(this.blending=t.blending),t.combine!==void 0&&(this.combine=t.combine),t.side!==void 0&&(this.side=t.side),t.shadowSide!==void 0&&(this.shadowSide=t.shadowSide),t.opacity!==void 0&&(this.opacity=t.opacity),t.transparent!==void 0&&(this.transparent=t.transparent),t.alphaTest!==void 0&&(this.alphaTest=t.alphaTest),t.alphaHash!==void 0&&(this.alphaHash=t.alphaHash),t.depthFunc!==void 0&&(this.depthFunc=t.depthFunc),t.depthTest!==void 0&&(this.depthTest=t.depthTest),t.depthWrite!==void 0&&(this.depthWrite=t.depthWrite),t.colorWrite!==void 0&&(this.colorWrite=t.colorWrite),t.clippingPlanes!==void 0&&(this.clippingPlanes=t.clippingPlanes.map(i=>new Tn().fromJSON(i))),t.clipIntersection!==void 0&&(this.clipIntersection=t.clipIntersection),t.clipShadows!==void 0&&(this.clipShadows=t.clipShadows),t.depthPacking!==void 0&&(this.depthPacking=t.depthPacking),t.blendSrc!==void 0&&(this.blendSrc=t.blendSrc),t.blendDst!==void 0&&(this.blendDst=t.blendDst),t.blendEquation!==void 0&&(this.blendEquation=t.blendEquation),t.blendSrcAlpha!==void 0&&(this.blendSrcAlpha=t.blendSrcAlpha),t.blendDstAlpha!==void 0&&(this.blendDstAlpha=t.blendDstAlpha),t.blendEquationAlpha!==void 0&&(this.blendEquationAlpha=t.blendEquationAlpha),t.blendColor!==void 0&&this.blendColor!==void 0&&this.blendColor.setHex(t.blendColor),t.blendAlpha!==void 0&&(this.blendAlpha=t.blendAlpha),t.stencilWriteMask!==void 0&&(this.stencilWriteMask=t.stencilWriteMask),t.stencilFunc!==void 0&&(this.stencilFunc=t.stencilFunc),t.stencilRef!==void 0&&(this.stencilRef=t.stencilRef),t.stencilFuncMask!==void 0&&(this.stencilFuncMask=t.stencilFuncMask),t.stencilFail!==void 0&&(this.stencilFail=t.stencilFail),t.stencilZFail!==void 0&&(this.stencilZFail=t.stencilZFail),t.stencilZPass!==void 0&&(this.stencilZPass=t.stencilZPass),t.stencilWrite!==void 0&&(this.stencilWrite=t.stencilWrite),t.wireframe!==void 0&&(this.wireframe=t.wireframe),t.wireframeLinewidth!==void 0&&(this.wireframeLinewidth=t.wireframeLinewidth),t.wireframeLinecap!==void 0&&(this.wireframeLinecap=t.wireframeLinecap),t.wireframeLinejoin!==void 0&&(this.wireframeLinejoin=t.wireframeLinejoin),t.rotation!==void 0&&(this.rotation=t.rotation),t.linewidth!==void 0&&(this.linewidth=t.linewidth),t.linecap!==void 0&&(this.linecap=t.linecap),t.linejoin!==void 0&&(this.linejoin=t.linejoin),t.dashSize!==void 0&&(this.dashSize=t.dashSize),t.gapSize!==void 0&&(this.gapSize=t.gapSize),t.scale!==void 0&&(this.scale=t.scale),t.polygonOffset!==void 0&&(this.polygonOffset=t.polygonOffset),t.polygonOffsetFactor!==void 0&&(this.polygonOffsetFactor=t.polygonOffsetFactor),t.polygonOffsetUnits!==void 0&&(this.polygonOffsetUnits=t.polygonOffsetUnits),t.dithering!==void 0&&(this.dithering=t.dithering),t.alphaToCoverage!==void 0&&(this.alphaToCoverage=t.alphaToCoverage),t.premultipliedAlpha!==void 0&&(this.premultipliedAlpha=t.premultipliedAlpha),t.forceSinglePass!==void 0&&(this.forceSinglePass=t.forceSinglePass),t.allowOverride!==void 0&&(this.allowOverride=t.allowOverride),t.visible!==void 0&&(this.visible=t.visible),t.toneMapped!==void 0&&(this.toneMapped=t.toneMapped),t.userData!==void 0&&(this.userData=t.userData),t.vertexColors!==void 0&&(typeof t.vertexColors=="number"?this.vertexColors=t.vertexColors>0:this.vertexColors=t.vertexColors),t.size!==void 0&&(this.size=t.size),t.sizeAttenuation!==void 0&&(this.sizeAttenuation=t.sizeAttenuation),t.map!==void 0&&(this.map=e[t.map]||null),t.matcap!==void 0&&(this.matcap=e[t.matcap]||null),t.alphaMap!==void 0&&(this.alphaMap=e[t.alphaMap]||null),t.bumpMap!==void 0&&(this.bumpMap=e[t.bumpMap]||null),t.bumpScale!==void 0&&(this.bumpScale=t.bumpScale),t.normalMap!==void 0&&(this.normalMap=e[t.normalMap]||null),t.normalMapType!==void 0&&(this.normalMapType=t.normalMapType),t.normalScale!==void 0){let i=t.normalScale;Array.isArray(i)===!1&&(i=[i,i]),this.normalScale=new rt().fromArray(i)}return t.displacementMap!==void 0&&(this.displacementMap=e[t.displacementMap]||null),t.displacementScale!==void 0&&(this.displacementScale=t.displacementScale),t.displacementBias!==void 0&&(this.displacementBias=t.displacementBias),t.roughnessMap!==void 0&&(this.roughnessMap=e[t.roughnessMap]||null),t.metalnessMap!==void 0&&(this.metalnessMap=e[t.metalnessMap]||null),t.emissiveMap!==void 0&&(this.emissiveMap=e[t.emissiveMap]||null),t.emissiveIntensity!==void 0&&(this.emissiveIntensity=t.emissiveIntensity),t.specularMap!==void 0&&(this.specularMap=e[t.specularMap]||null),t.specularIntensityMap!==void 0&&(this.specularIntensityMap=e[t.specularIntensityMap]||null),t.specularColorMap!==void 0&&(this.specularColorMap=e[t.specularColorMap]||null),t.envMap!==void 0&&(this.envMap=e[t.envMap]||null),t.envMapRotation!==void 0&&this.envMapRotation.fromArray(t.envMapRotation),t.envMapIntensity!==void 0&&(this.envMapIntensity=t.envMapIntensity),t.reflectivity!==void 0&&(this.reflectivity=t.reflectivity),t.refractionRatio!==void 0&&(this.refractionRatio=t.refractionRatio),t.lightMap!==void 0&&(this.lightMap=e[t.lightMap]||null),t.lightMapIntensity!==void 0&&(this.lightMapIntensity=t.lightMapIntensity),t.aoMap!==void 0&&(this.aoMap=e[t.aoMap]||null),t.aoMapIntensity!==void 0&&(this.aoMapIntensity=t.aoMapIntensity),t.gradientMap!==void 0&&(this.gradientMap=e[t.gradientMap]||null),t.clearcoatMap!==void 0&&(this.clearcoatMap=e[t.clearcoatMap]||null),t.clearcoatRoughnessMap!==void 0&&(this.clearcoatRoughnessMap=e[t.clearcoatRoughnessMap]||null),t.clearcoatNormalMap!==void 0&&(this.clearcoatNormalMap=e[t.clearcoatNormalMap]||null),t.clearcoatNormalScale!==void 0&&(this.clearcoatNormalScale=new rt().fromArray(t.clearcoatNormalScale)),t.diffuseRoughnessMap!==void 0&&(this.diffuseRoughnessMap=e[t.diffuseRoughnessMap]||null),t.iridescenceMap!==void 0&&(this.iridescenceMap=e[t.iridescenceMap]||null),t.iridescenceThicknessMap!==void 0&&(this.iridescenceThicknessMap=e[t.iridescenceThicknessMap]||null),t.transmissionMap!==void 0&&(this.transmissionMap=e[t.transmissionMap]||null),t.thicknessMap!==void 0&&(this.thicknessMap=e[t.thicknessMap]||null),t.anisotropyMap!==void 0&&(this.anisotropyMap=e[t.anisotropyMap]||null),t.sheenColorMap!==void 0&&(this.sheenColorMap=e[t.sheenColorMap]||null),t.sheenRoughnessMap!==void 0&&(this.sheenRoughnessMap=e[t.sheenRoughnessMap]||null),this}clone(){return new this.constructor().copy(this)}copy(t){this.name=t.name,this.blending=t.blending,this.side=t.side,this.vertexColors=t.vertexColors,this.opacity=t.opacity,this.transparent=t.transparent,this.blendSrc=t.blendSrc,this.blendDst=t.blendDst,this.blendEquation=t.blendEquation,this.blendSrcAlpha=t.blendSrcAlpha,this.blendDstAlpha=t.blendDstAlpha,this.blendEquationAlpha=t.blendEquationAlpha,this.blendColor.copy(t.blendColor),this.blendAlpha=t.blendAlpha,this.depthFunc=t.depthFunc,this.depthTest=t.depthTest,this.depthWrite=t.depthWrite,this.stencilWriteMask=t.stencilWriteMask,this.stencilFunc=t.stencilFunc,this.stencilRef=t.stencilRef,this.stencilFuncMask=t.stencilFuncMask,this.stencilFail=t.stencilFail,this.stencilZFail=t.stencilZFail,this.stencilZPass=t.stencilZPass,this.stencilWrite=t.stencilWrite;let e=t.clippingPlanes,i=null;if(e!==null){let s=e.length;i=new Array(s);for(let r=0;r!==s;++r)i[r]=e[r].clone()}return this.clippingPlanes=i,this.clipIntersection=t.clipIntersection,this.clipShadows=t.clipShadows,this.shadowSide=t.shadowSide,this.colorWrite=t.colorWrite,this.precision=t.precision,this.polygonOffset=t.polygonOffset,this.polygonOffsetFactor=t.polygonOffsetFactor,this.polygonOffsetUnits=t.polygonOffsetUnits,this.dithering=t.dithering,this.alphaTest=t.alphaTest,this.alphaHash=t.alphaHash,this.alphaToCoverage=t.alphaToCoverage,this.premultipliedAlpha=t.premultipliedAlpha,this.forceSinglePass=t.forceSinglePass,this.allowOverride=t.allowOverride,this.visible=t.visible,this.toneMapped=t.toneMapped,this.userData=JSON.parse(JSON.stringify(t.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(t){t===!0&&this.version++}};var Mi=new N,mh=new N,Qa=new N,tl=new N,Hi=class{constructor(t=new N,e=new N(0,0,-1)){this.origin=t,this.direction=e}set(t,e){return this.origin.copy(t),this.direction.copy(e),this}copy(t){return this.origin.copy(t.origin),this.direction.copy(t.direction),this}at(t,e){return e.copy(this.origin).addScaledVector(this.direction,t)}lookAt(t){return this.direction.copy(t).sub(this.origin).normalize(),this}recast(t){return this.origin.copy(this.at(t,Mi)),this}closestPointToPoint(t,e){e.subVectors(t,this.origin);let i=e.dot(this.direction);return i<0?e.copy(this.origin):e.copy(this.origin).addScaledVector(this.direction,i)}distanceToPoint(t){return Math.sqrt(this.distanceSqToPoint(t))}distanceSqToPoint(t){let e=Mi.subVectors(t,this.origin).dot(this.direction);return e<0?this.origin.distanceToSquared(t):(Mi.copy(this.origin).addScaledVector(this.direction,e),Mi.distanceToSquared(t))}distanceSqToSegment(t,e,i,s){mh.copy(t).add(e).multiplyScalar(.5),Qa.copy(e).sub(t).normalize(),tl.copy(this.origin).sub(mh);let r=t.distanceTo(e)*.5,o=-this.direction.dot(Qa),a=tl.dot(this.direction),l=-tl.dot(Qa),c=tl.lengthSq(),u=Math.abs(1-o*o),f,d,h,m;if(u>0)if(f=o*l-a,d=o*a-l,m=r*u,f>=0)if(d>=-m)if(d<=m){let y=1/u;f*=y,d*=y,h=f*(f+o*d+2*a)+d*(o*f+d+2*l)+c}else d=r,f=Math.max(0,-(o*d+a)),h=-f*f+d*(d+2*l)+c;else d=-r,f=Math.max(0,-(o*d+a)),h=-f*f+d*(d+2*l)+c;else d<=-m?(f=Math.max(0,-(-o*r+a)),d=f>0?-r:Math.min(Math.max(-r,-l),r),h=-f*f+d*(d+2*l)+c):d<=m?(f=0,d=Math.min(Math.max(-r,-l),r),h=d*(d+2*l)+c):(f=Math.max(0,-(o*r+a)),d=f>0?r:Math.min(Math.max(-r,-l),r),h=-f*f+d*(d+2*l)+c);else d=o>0?-r:r,f=Math.max(0,-(o*d+a)),h=-f*f+d*(d+2*l)+c;return i&&i.copy(this.origin).addScaledVector(this.direction,f),s&&s.copy(mh).addScaledVector(Qa,d),h}intersectSphere(t,e){if(t.radius<0)return null;Mi.subVectors(t.center,this.origin);let i=Mi.dot(this.direction),s=Mi.dot(Mi)-i*i,r=t.radius*t.radius;if(s>r)return null;let o=Math.sqrt(r-s),a=i-o,l=i+o;return l<0?null:a<0?this.at(l,e):this.at(a,e)}intersectsSphere(t){return t.radius<0?!1:this.distanceSqToPoint(t.center)<=t.radius*t.radius}distanceToPlane(t){let e=t.normal.dot(this.direction);if(e===0)return t.distanceToPoint(this.origin)===0?0:null;let i=-(this.origin.dot(t.normal)+t.constant)/e;return i>=0?i:null}intersectPlane(t,e){let i=this.distanceToPlane(t);return i===null?null:this.at(i,e)}intersectsPlane(t){let e=t.distanceToPoint(this.origin);return e===0||t.normal.dot(this.direction)*e<0}intersectBox(t,e){let i,s,r,o,a,l,c=1/this.direction.x,u=1/this.direction.y,f=1/this.direction.z,d=this.origin;return c>=0?(i=(t.min.x-d.x)*c,s=(t.max.x-d.x)*c):(i=(t.max.x-d.x)*c,s=(t.min.x-d.x)*c),u>=0?(r=(t.min.y-d.y)*u,o=(t.max.y-d.y)*u):(r=(t.max.y-d.y)*u,o=(t.min.y-d.y)*u),i>o||r>s||((r>i||isNaN(i))&&(i=r),(o<s||isNaN(s))&&(s=o),f>=0?(a=(t.min.z-d.z)*f,l=(t.max.z-d.z)*f):(a=(t.max.z-d.z)*f,l=(t.min.z-d.z)*f),i>l||a>s)||((a>i||i!==i)&&(i=a),(l<s||s!==s)&&(s=l),s<0)?null:this.at(i>=0?i:s,e)}intersectsBox(t){return this.intersectBox(t,Mi)!==null}intersectTriangle(t,e,i,s,r){let o=this.origin,a=this.direction,l=a.x,c=a.y,u=a.z,f=t.x-o.x,d=t.y-o.y,h=t.z-o.z,m=e.x-o.x,y=e.y-o.y,g=e.z-o.z,p=i.x-o.x,v=i.y-o.y,M=i.z-o.z,b=Math.abs(l),E=Math.abs(c),A=Math.abs(u),x,T,D,R,P,F,k,I,W,X,B,Q;if(b>=E&&b>=A?(D=l,F=f,W=m,Q=p,l>=0?(x=c,T=u,R=d,P=h,k=y,I=g,X=v,B=M):(x=u,T=c,R=h,P=d,k=g,I=y,X=M,B=v)):E>=A?(D=c,F=d,W=y,Q=v,c>=0?(x=u,T=l,R=h,P=f,k=g,I=m,X=M,B=p):(x=l,T=u,R=f,P=h,k=m,I=g,X=p,B=M)):(D=u,F=h,W=g,Q=M,u>=0?(x=l,T=c,R=f,P=d,k=m,I=y,X=p,B=v):(x=c,T=l,R=d,P=f,k=y,I=m,X=v,B=p)),D===0)return null;let G=x/D,tt=T/D,et=1/D,xt=R-G*F,Dt=P-tt*F,Z=k-G*W,dt=I-tt*W,yt=X-G*Q,Et=B-tt*Q,mt=yt*dt-Et*Z,Ut=xt*Et-Dt*yt,Ee=Z*Dt-dt*xt;if(s){if(mt<0||Ut<0||Ee<0)return null}else if((mt<0||Ut<0||Ee<0)&&(mt>0||Ut>0||Ee>0))return null;let Pt=mt+Ut+Ee;if(Pt===0)return null;let te=et*(mt*F+Ut*W+Ee*Q);return(Pt>0?te<0:te>0)?null:this.at(te/Pt,r)}applyMatrix4(t){return this.origin.applyMatrix4(t),this.direction.transformDirection(t),this}equals(t){return t.origin.equals(this.origin)&&t.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}},$e=class extends li{constructor(t){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new kt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Ti,this.combine=rc,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.fog=t.fog,this}},Cp=new Qt,ys=new Hi,el=new ai,Rp=new N,nl=new N,il=new N,sl=new N,gh=new N,rl=new N,Pp=new N,ol=new N,Re=class extends Ye{constructor(t=new ce,e=new $e){super(),this.isMesh=!0,this.type="Mesh",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}updateMorphTargets(){let e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){let s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}getVertexPosition(t,e){let i=this.geometry,s=i.attributes.position,r=i.morphAttributes.position,o=i.morphTargetsRelative;e.fromBufferAttribute(s,t);let a=this.morphTargetInfluences;if(r&&a){rl.set(0,0,0);for(let l=0,c=r.length;l<c;l++){let u=a[l],f=r[l];u!==0&&(gh.fromBufferAttribute(f,t),o?rl.addScaledVector(gh,u):rl.addScaledVector(gh.sub(e),u))}e.add(rl)}return e}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let i=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(i.boundingSphere===null&&i.computeBoundingSphere(),el.copy(i.boundingSphere),el.applyMatrix4(r),ys.copy(t.ray).recast(t.near),!(el.containsPoint(ys.origin)===!1&&(ys.intersectSphere(el,Rp)===null||ys.origin.distanceToSquared(Rp)>(t.far-t.near)**2))&&(Cp.copy(r).invert(),ys.copy(t.ray).applyMatrix4(Cp),!(i.boundingBox!==null&&ys.intersectsBox(i.boundingBox)===!1)&&this._computeIntersections(t,e,ys)))}_computeIntersections(t,e,i){let s,r=this.geometry,o=this.material,a=r.index,l=r.attributes.position,c=r.attributes.uv,u=r.attributes.uv1,f=r.attributes.normal,d=r.groups,h=r.drawRange;if(a!==null)if(Array.isArray(o))for(let m=0,y=d.length;m<y;m++){let g=d[m],p=o[g.materialIndex],v=Math.max(g.start,h.start),M=Math.min(a.count,Math.min(g.start+g.count,h.start+h.count));for(let b=v,E=M;b<E;b+=3){let A=a.getX(b),x=a.getX(b+1),T=a.getX(b+2);s=al(this,p,t,i,c,u,f,A,x,T),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=g.materialIndex,e.push(s))}}else{let m=Math.max(0,h.start),y=Math.min(a.count,h.start+h.count);for(let g=m,p=y;g<p;g+=3){let v=a.getX(g),M=a.getX(g+1),b=a.getX(g+2);s=al(this,o,t,i,c,u,f,v,M,b),s&&(s.faceIndex=Math.floor(g/3),e.push(s))}}else if(l!==void 0)if(Array.isArray(o))for(let m=0,y=d.length;m<y;m++){let g=d[m],p=o[g.materialIndex],v=Math.max(g.start,h.start),M=Math.min(l.count,Math.min(g.start+g.count,h.start+h.count));for(let b=v,E=M;b<E;b+=3){let A=b,x=b+1,T=b+2;s=al(this,p,t,i,c,u,f,A,x,T),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=g.materialIndex,e.push(s))}}else{let m=Math.max(0,h.start),y=Math.min(l.count,h.start+h.count);for(let g=m,p=y;g<p;g+=3){let v=g,M=g+1,b=g+2;s=al(this,o,t,i,c,u,f,v,M,b),s&&(s.faceIndex=Math.floor(g/3),e.push(s))}}}};function sv(n,t,e,i,s,r,o,a){let l;if(t.side===fn?l=i.intersectTriangle(o,r,s,!0,a):l=i.intersectTriangle(s,r,o,t.side===Qi,a),l===null)return null;ol.copy(a),ol.applyMatrix4(n.matrixWorld);let c=e.ray.origin.distanceTo(ol);return c<e.near||c>e.far?null:{distance:c,point:ol.clone(),object:n}}function al(n,t,e,i,s,r,o,a,l,c){n.getVertexPosition(a,nl),n.getVertexPosition(l,il),n.getVertexPosition(c,sl);let u=sv(n,t,e,i,nl,il,sl,Pp);if(u){let f=new N;Gi.getBarycoord(Pp,nl,il,sl,f),s&&(u.uv=Gi.getInterpolatedAttribute(s,a,l,c,f,new rt)),r&&(u.uv1=Gi.getInterpolatedAttribute(r,a,l,c,f,new rt)),o&&(u.normal=Gi.getInterpolatedAttribute(o,a,l,c,f,new N),u.normal.dot(i.direction)>0&&u.normal.multiplyScalar(-1));let d={a,b:l,c,normal:new N,materialIndex:0};Gi.getNormal(nl,il,sl,d.normal),u.face=d,u.barycoord=f}return u}var To=class extends pn{constructor(t=null,e=1,i=1,s,r,o,a,l,c=qe,u=qe,f,d){super(null,o,a,l,c,u,s,r,f,d),this.isDataTexture=!0,this.image={data:t,width:e,height:i},this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}};var _r=class extends Oe{constructor(t,e,i,s=1){super(t,e,i),this.isInstancedBufferAttribute=!0,this.meshPerAttribute=s}copy(t){return super.copy(t),this.meshPerAttribute=t.meshPerAttribute,this}toJSON(){let t=super.toJSON();return t.meshPerAttribute=this.meshPerAttribute,t.isInstancedBufferAttribute=!0,t}},rr=new Qt,Ip=new Qt,ll=[],Dp=new oi,rv=new Qt,oo=new Re,ao=new ai,Ao=class extends Re{constructor(t,e,i){super(t,e),this.isInstancedMesh=!0,this.instanceMatrix=new _r(new Float32Array(i*16),16),this.instanceColor=null,this.morphTexture=null,this.count=i,this.boundingBox=null,this.boundingSphere=null;for(let s=0;s<i;s++)this.setMatrixAt(s,rv)}computeBoundingBox(){let t=this.geometry,e=this.count;this.boundingBox===null&&(this.boundingBox=new oi),t.boundingBox===null&&t.computeBoundingBox(),this.boundingBox.makeEmpty();for(let i=0;i<e;i++)this.getMatrixAt(i,rr),Dp.copy(t.boundingBox).applyMatrix4(rr),this.boundingBox.union(Dp)}computeBoundingSphere(){let t=this.geometry,e=this.count;this.boundingSphere===null&&(this.boundingSphere=new ai),t.boundingSphere===null&&t.computeBoundingSphere(),this.boundingSphere.makeEmpty();for(let i=0;i<e;i++)this.getMatrixAt(i,rr),ao.copy(t.boundingSphere).applyMatrix4(rr),this.boundingSphere.union(ao)}copy(t,e){return super.copy(t,e),this.instanceMatrix.copy(t.instanceMatrix),this.morphTexture=t.morphTexture!==null?t.morphTexture.clone():null,this.instanceColor=t.instanceColor!==null?t.instanceColor.clone():null,this.count=t.count,this.boundingBox=t.boundingBox!==null?t.boundingBox.clone():null,this.boundingSphere=t.boundingSphere!==null?t.boundingSphere.clone():null,this}getColorAt(t,e){return this.instanceColor===null?e.setRGB(1,1,1):e.fromArray(this.instanceColor.array,t*3)}getMatrixAt(t,e){return e.fromArray(this.instanceMatrix.array,t*16)}getMorphAt(t,e){let i=e.morphTargetInfluences,s=this.morphTexture.source.data.data,r=i.length+1,o=t*r+1;for(let a=0;a<i.length;a++)i[a]=s[o+a]}raycast(t,e){let i=this.matrixWorld,s=this.count;if(oo.geometry=this.geometry,oo.material=this.material,oo.material!==void 0&&(this.boundingSphere===null&&this.computeBoundingSphere(),ao.copy(this.boundingSphere),ao.applyMatrix4(i),t.ray.intersectsSphere(ao)!==!1))for(let r=0;r<s;r++){this.getMatrixAt(r,rr),Ip.multiplyMatrices(i,rr),oo.matrixWorld=Ip,oo.raycast(t,ll);for(let o=0,a=ll.length;o<a;o++){let l=ll[o];l.instanceId=r,l.object=this,e.push(l)}ll.length=0}}setColorAt(t,e){return this.instanceColor===null&&(this.instanceColor=new _r(new Float32Array(this.instanceMatrix.count*3).fill(1),3)),e.toArray(this.instanceColor.array,t*3),this}setMatrixAt(t,e){return e.toArray(this.instanceMatrix.array,t*16),this}setMorphAt(t,e){let i=e.morphTargetInfluences,s=i.length+1;this.morphTexture===null&&(this.morphTexture=new To(new Float32Array(s*this.count),s,this.count,fc,kn));let r=this.morphTexture.source.data.data,o=0;for(let c=0;c<i.length;c++)o+=i[c];let a=this.geometry.morphTargetsRelative?1:1-o,l=s*t;return r[l]=a,r.set(i,l+1),this}updateMorphTargets(){}dispose(){super.dispose(),this.instanceMatrix.dispose(),this.instanceColor!==null&&this.instanceColor.dispose(),this.morphTexture!==null&&(this.morphTexture.dispose(),this.morphTexture=null)}},xs=new ai,ov=new rt(.5,.5),cl=new N,Wi=class{constructor(t=new Tn,e=new Tn,i=new Tn,s=new Tn,r=new Tn,o=new Tn){this.planes=[t,e,i,s,r,o]}set(t,e,i,s,r,o){let a=this.planes;return a[0].copy(t),a[1].copy(e),a[2].copy(i),a[3].copy(s),a[4].copy(r),a[5].copy(o),this}copy(t){let e=this.planes;for(let i=0;i<6;i++)e[i].copy(t.planes[i]);return this}setFromProjectionMatrix(t,e=Bn,i=!1){let s=this.planes,r=t.elements,o=r[0],a=r[1],l=r[2],c=r[3],u=r[4],f=r[5],d=r[6],h=r[7],m=r[8],y=r[9],g=r[10],p=r[11],v=r[12],M=r[13],b=r[14],E=r[15];if(s[0].setComponents(c-o,h-u,p-m,E-v).normalize(),s[1].setComponents(c+o,h+u,p+m,E+v).normalize(),s[2].setComponents(c+a,h+f,p+y,E+M).normalize(),s[3].setComponents(c-a,h-f,p-y,E-M).normalize(),i)s[4].setComponents(l,d,g,b).normalize(),s[5].setComponents(c-l,h-d,p-g,E-b).normalize();else if(s[4].setComponents(c-l,h-d,p-g,E-b).normalize(),e===Bn)s[5].setComponents(c+l,h+d,p+g,E+b).normalize();else if(e===fr)s[5].setComponents(l,d,g,b).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+e);return this}intersectsObject(t){if(t.boundingSphere!==void 0)t.boundingSphere===null&&t.computeBoundingSphere(),xs.copy(t.boundingSphere).applyMatrix4(t.matrixWorld);else{let e=t.geometry;e.boundingSphere===null&&e.computeBoundingSphere(),xs.copy(e.boundingSphere).applyMatrix4(t.matrixWorld)}return this.intersectsSphere(xs)}intersectsSprite(t){xs.center.set(0,0,0);let e=ov.distanceTo(t.center);return xs.radius=.7071067811865476+e,xs.applyMatrix4(t.matrixWorld),this.intersectsSphere(xs)}intersectsSphere(t){let e=this.planes,i=t.center,s=-t.radius;for(let r=0;r<6;r++)if(e[r].distanceToPoint(i)<s)return!1;return!0}intersectsBox(t){let e=this.planes;for(let i=0;i<6;i++){let s=e[i];if(cl.x=s.normal.x>0?t.max.x:t.min.x,cl.y=s.normal.y>0?t.max.y:t.min.y,cl.z=s.normal.z>0?t.max.z:t.min.z,s.distanceToPoint(cl)<0)return!1}return!0}containsPoint(t){let e=this.planes;for(let i=0;i<6;i++)if(e[i].distanceToPoint(t)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}},Lp=new Qt,Nl=class n{constructor(){this.coordinateSystem=Bn,this._frustums=[],this._count=0}setFromArrayCamera(t){let e=t.cameras,i=this._frustums;for(let s=0;s<e.length;s++){let r=e[s];Lp.multiplyMatrices(r.projectionMatrix,r.matrixWorldInverse),i[s]===void 0&&(i[s]=new Wi),i[s].setFromProjectionMatrix(Lp,r.coordinateSystem,r.reversedDepth)}return this._count=e.length,this}getFrustum(t){return this._frustums[t]}intersectsObject(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsObject(t))return!0;return!1}intersectsSprite(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsSprite(t))return!0;return!1}intersectsSphere(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsSphere(t))return!0;return!1}intersectsBox(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsBox(t))return!0;return!1}containsPoint(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].containsPoint(t))return!0;return!1}copy(t){this.coordinateSystem=t.coordinateSystem;let e=this._frustums,i=t._frustums;for(let s=0;s<t._count;s++)e[s]===void 0&&(e[s]=new Wi),e[s].copy(i[s]);return this._count=t._count,this}clone(){return new n().copy(this)}};var ci=class extends li{constructor(t){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new kt(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.linewidth=t.linewidth,this.linecap=t.linecap,this.linejoin=t.linejoin,this.fog=t.fog,this}},Ul=new N,Fl=new N,Np=new Qt,lo=new Hi,ul=new ai,_h=new N,Up=new N,Xi=class extends Ye{constructor(t=new ce,e=new ci){super(),this.isLine=!0,this.type="Line",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,i=[0];for(let s=1,r=e.count;s<r;s++)Ul.fromBufferAttribute(e,s-1),Fl.fromBufferAttribute(e,s),i[s]=i[s-1],i[s]+=Ul.distanceTo(Fl);t.setAttribute("lineDistance",new Xt(i,1))}else Rt("Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let i=this.geometry,s=this.matrixWorld,r=t.params.Line.threshold,o=i.drawRange;if(i.boundingSphere===null&&i.computeBoundingSphere(),ul.copy(i.boundingSphere),ul.applyMatrix4(s),ul.radius+=r,t.ray.intersectsSphere(ul)===!1)return;Np.copy(s).invert(),lo.copy(t.ray).applyMatrix4(Np);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=a*a,c=this.isLineSegments?2:1,u=i.index,d=i.attributes.position;if(u!==null){let h=Math.max(0,o.start),m=Math.min(u.count,o.start+o.count);for(let y=h,g=m-1;y<g;y+=c){let p=u.getX(y),v=u.getX(y+1),M=hl(this,t,lo,l,p,v,y);M&&e.push(M)}if(this.isLineLoop){let y=u.getX(m-1),g=u.getX(h),p=hl(this,t,lo,l,y,g,m-1);p&&e.push(p)}}else{let h=Math.max(0,o.start),m=Math.min(d.count,o.start+o.count);for(let y=h,g=m-1;y<g;y+=c){let p=hl(this,t,lo,l,y,y+1,y);p&&e.push(p)}if(this.isLineLoop){let y=hl(this,t,lo,l,m-1,h,m-1);y&&e.push(y)}}}updateMorphTargets(){let e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){let s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function hl(n,t,e,i,s,r,o){let a=n.geometry.attributes.position;if(Ul.fromBufferAttribute(a,s),Fl.fromBufferAttribute(a,r),e.distanceSqToSegment(Ul,Fl,_h,Up)>i)return;_h.applyMatrix4(n.matrixWorld);let c=t.ray.origin.distanceTo(_h);if(!(c<t.near||c>t.far))return{distance:c,point:Up.clone().applyMatrix4(n.matrixWorld),index:o,face:null,faceIndex:null,barycoord:null,object:n}}var Fp=new N,Op=new N,vr=class extends Xi{constructor(t,e){super(t,e),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,i=[];for(let s=0,r=e.count;s<r;s+=2)Fp.fromBufferAttribute(e,s),Op.fromBufferAttribute(e,s+1),i[s]=s===0?0:i[s-1],i[s+1]=i[s]+Fp.distanceTo(Op);t.setAttribute("lineDistance",new Xt(i,1))}else Rt("LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}};var Ol=class extends li{constructor(t){super(),this.isPointsMaterial=!0,this.type="PointsMaterial",this.color=new kt(16777215),this.map=null,this.alphaMap=null,this.size=1,this.sizeAttenuation=!0,this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.alphaMap=t.alphaMap,this.size=t.size,this.sizeAttenuation=t.sizeAttenuation,this.fog=t.fog,this}},Bp=new Qt,Ah=new Hi,fl=new ai,dl=new N,Eo=class extends Ye{constructor(t=new ce,e=new Ol){super(),this.isPoints=!0,this.type="Points",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let i=this.geometry,s=this.matrixWorld,r=t.params.Points.threshold,o=i.drawRange;if(i.boundingSphere===null&&i.computeBoundingSphere(),fl.copy(i.boundingSphere),fl.applyMatrix4(s),fl.radius+=r,t.ray.intersectsSphere(fl)===!1)return;Bp.copy(s).invert(),Ah.copy(t.ray).applyMatrix4(Bp);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=a*a,c=i.index,f=i.attributes.position;if(c!==null){let d=Math.max(0,o.start),h=Math.min(c.count,o.start+o.count);for(let m=d,y=h;m<y;m++){let g=c.getX(m);dl.fromBufferAttribute(f,g),kp(dl,g,l,s,t,e,this)}}else{let d=Math.max(0,o.start),h=Math.min(f.count,o.start+o.count);for(let m=d,y=h;m<y;m++)dl.fromBufferAttribute(f,m),kp(dl,m,l,s,t,e,this)}}updateMorphTargets(){let e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){let s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function kp(n,t,e,i,s,r,o){let a=Ah.distanceSqToPoint(n);if(a<e){let l=new N;Ah.closestPointToPoint(n,l),l.applyMatrix4(i);let c=s.ray.origin.distanceTo(l);if(c<s.near||c>s.far)return;r.push({distance:c,distanceToRay:Math.sqrt(a),point:l,index:t,face:null,faceIndex:null,barycoord:null,object:o})}}var Co=class extends pn{constructor(t=[],e=As,i,s,r,o,a,l,c,u){super(t,e,i,s,r,o,a,l,c,u),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(t){this.image=t}};var Ai=class extends pn{constructor(t,e,i=Jn,s,r,o,a=qe,l=qe,c,u=wi,f=1){if(u!==wi&&u!==Ri)throw new Error("THREE.DepthTexture: format must be either THREE.DepthFormat or THREE.DepthStencilFormat");let d={width:t,height:e,depth:f};super(d,s,r,o,a,l,u,i,c),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(t){return super.copy(t),this.source=new mr(Object.assign({},t.image)),this.compareFunction=t.compareFunction,this}toJSON(t){let e=super.toJSON(t);return e.compareFunction=this.compareFunction,e}},Ro=class extends Ai{constructor(t,e=Jn,i=As,s,r,o=qe,a=qe,l,c=wi){let u={width:t,height:t,depth:1},f=[u,u,u,u,u,u];super(t,t,e,i,s,r,o,a,l,c),this.image=f,this.isCubeDepthTexture=!0,this.isCubeTexture=!0}get images(){return this.image}set images(t){this.image=t}},Po=class extends pn{constructor(t=null){super(),this.sourceTexture=t,this.isExternalTexture=!0}copy(t){return super.copy(t),this.sourceTexture=t.sourceTexture,this}},mn=class n extends ce{constructor(t=1,e=1,i=1,s=1,r=1,o=1){super(),this.type="BoxGeometry",this.parameters={width:t,height:e,depth:i,widthSegments:s,heightSegments:r,depthSegments:o};let a=this;s=Math.floor(s),r=Math.floor(r),o=Math.floor(o);let l=[],c=[],u=[],f=[],d=0,h=0;m("z","y","x",-1,-1,i,e,t,o,r,0),m("z","y","x",1,-1,i,e,-t,o,r,1),m("x","z","y",1,1,t,i,e,s,o,2),m("x","z","y",1,-1,t,i,-e,s,o,3),m("x","y","z",1,-1,t,e,i,s,r,4),m("x","y","z",-1,-1,t,e,-i,s,r,5),this.setIndex(l),this.setAttribute("position",new Xt(c,3)),this.setAttribute("normal",new Xt(u,3)),this.setAttribute("uv",new Xt(f,2));function m(y,g,p,v,M,b,E,A,x,T,D){let R=b/x,P=E/T,F=b/2,k=E/2,I=A/2,W=x+1,X=T+1,B=0,Q=0,G=new N;for(let tt=0;tt<X;tt++){let et=tt*P-k;for(let xt=0;xt<W;xt++){let Dt=xt*R-F;G[y]=Dt*v,G[g]=et*M,G[p]=I,c.push(G.x,G.y,G.z),G[y]=0,G[g]=0,G[p]=A>0?1:-1,u.push(G.x,G.y,G.z),f.push(xt/x),f.push(1-tt/T),B+=1}}for(let tt=0;tt<T;tt++)for(let et=0;et<x;et++){let xt=d+et+W*tt,Dt=d+et+W*(tt+1),Z=d+(et+1)+W*(tt+1),dt=d+(et+1)+W*tt;l.push(xt,Dt,dt),l.push(Dt,Z,dt),Q+=6}a.addGroup(h,Q,D),h+=Q,d+=B}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.width,t.height,t.depth,t.widthSegments,t.heightSegments,t.depthSegments)}};var bs=class n extends ce{constructor(t=1,e=32,i=0,s=Math.PI*2){super(),this.type="CircleGeometry",this.parameters={radius:t,segments:e,thetaStart:i,thetaLength:s},e=Math.max(3,e);let r=[],o=[],a=[],l=[],c=new N,u=new rt;o.push(0,0,0),a.push(0,0,1),l.push(.5,.5);for(let f=0,d=3;f<=e;f++,d+=3){let h=i+f/e*s;c.x=t*Math.cos(h),c.y=t*Math.sin(h),o.push(c.x,c.y,c.z),a.push(0,0,1),u.x=(o[d]/t+1)/2,u.y=(o[d+1]/t+1)/2,l.push(u.x,u.y)}for(let f=1;f<=e;f++)r.push(f,f+1,0);this.setIndex(r),this.setAttribute("position",new Xt(o,3)),this.setAttribute("normal",new Xt(a,3)),this.setAttribute("uv",new Xt(l,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radius,t.segments,t.thetaStart,t.thetaLength)}},Ei=class n extends ce{constructor(t=1,e=1,i=1,s=32,r=1,o=!1,a=0,l=Math.PI*2){super(),this.type="CylinderGeometry",this.parameters={radiusTop:t,radiusBottom:e,height:i,radialSegments:s,heightSegments:r,openEnded:o,thetaStart:a,thetaLength:l};let c=this;s=Math.floor(s),r=Math.floor(r);let u=[],f=[],d=[],h=[],m=0,y=[],g=i/2,p=0;v(),o===!1&&(t>0&&M(!0),e>0&&M(!1)),this.setIndex(u),this.setAttribute("position",new Xt(f,3)),this.setAttribute("normal",new Xt(d,3)),this.setAttribute("uv",new Xt(h,2));function v(){let b=new N,E=new N,A=0,x=(e-t)/i;for(let T=0;T<=r;T++){let D=[],R=T/r,P=R*(e-t)+t;for(let F=0;F<=s;F++){let k=F/s,I=k*l+a,W=Math.sin(I),X=Math.cos(I);E.x=P*W,E.y=-R*i+g,E.z=P*X,f.push(E.x,E.y,E.z),b.set(W,x,X).normalize(),d.push(b.x,b.y,b.z),h.push(k,1-R),D.push(m++)}y.push(D)}for(let T=0;T<s;T++)for(let D=0;D<r;D++){let R=y[D][T],P=y[D+1][T],F=y[D+1][T+1],k=y[D][T+1];(t>0||D!==0)&&(u.push(R,P,k),A+=3),(e>0||D!==r-1)&&(u.push(P,F,k),A+=3)}c.addGroup(p,A,0),p+=A}function M(b){let E=m,A=new rt,x=new N,T=0,D=b===!0?t:e,R=b===!0?1:-1;for(let F=1;F<=s;F++)f.push(0,g*R,0),d.push(0,R,0),h.push(.5,.5),m++;let P=m;for(let F=0;F<=s;F++){let I=F/s*l+a,W=Math.cos(I),X=Math.sin(I);x.x=D*X,x.y=g*R,x.z=D*W,f.push(x.x,x.y,x.z),d.push(0,R,0),A.x=W*.5+.5,A.y=X*.5*R+.5,h.push(A.x,A.y),m++}for(let F=0;F<s;F++){let k=E+F,I=P+F;b===!0?u.push(I,I+1,k):u.push(I+1,I,k),T+=3}c.addGroup(p,T,b===!0?1:2),p+=T}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radiusTop,t.radiusBottom,t.height,t.radialSegments,t.heightSegments,t.openEnded,t.thetaStart,t.thetaLength)}};var En=class{constructor(){this.type="Curve",this.arcLengthDivisions=200,this.needsUpdate=!1,this.cacheArcLengths=null}getPoint(){Rt("Curve: .getPoint() not implemented.")}getPointAt(t,e){let i=this.getUtoTmapping(t);return this.getPoint(i,e)}getPoints(t=5){let e=[];for(let i=0;i<=t;i++)e.push(this.getPoint(i/t));return e}getSpacedPoints(t=5){let e=[];for(let i=0;i<=t;i++)e.push(this.getPointAt(i/t));return e}getLength(){let t=this.getLengths();return t[t.length-1]}getLengths(t=this.arcLengthDivisions){if(this.cacheArcLengths&&this.cacheArcLengths.length===t+1&&!this.needsUpdate)return this.cacheArcLengths;this.needsUpdate=!1;let e=[],i,s=this.getPoint(0),r=0;e.push(0);for(let o=1;o<=t;o++)i=this.getPoint(o/t),r+=i.distanceTo(s),e.push(r),s=i;return this.cacheArcLengths=e,e}updateArcLengths(){this.needsUpdate=!0,this.getLengths()}getUtoTmapping(t,e=null){let i=this.getLengths(),s=0,r=i.length,o;e?o=e:o=t*i[r-1];let a=0,l=r-1,c;for(;a<=l;)if(s=Math.floor(a+(l-a)/2),c=i[s]-o,c<0)a=s+1;else if(c>0)l=s-1;else{l=s;break}if(s=l,i[s]===o)return s/(r-1);let u=i[s],d=i[s+1]-u,h=(o-u)/d;return(s+h)/(r-1)}getTangent(t,e){let s=t-1e-4,r=t+1e-4;s<0&&(s=0),r>1&&(r=1);let o=this.getPoint(s),a=this.getPoint(r),l=e||(o.isVector2?new rt:new N);return l.copy(a).sub(o).normalize(),l}getTangentAt(t,e){let i=this.getUtoTmapping(t);return this.getTangent(i,e)}computeFrenetFrames(t,e=!1){let i=new N,s=[],r=[],o=[],a=new N,l=new Qt;for(let h=0;h<=t;h++){let m=h/t;s[h]=this.getTangentAt(m,new N)}r[0]=new N,o[0]=new N;let c=Number.MAX_VALUE,u=Math.abs(s[0].x),f=Math.abs(s[0].y),d=Math.abs(s[0].z);u<=c&&(c=u,i.set(1,0,0)),f<=c&&(c=f,i.set(0,1,0)),d<=c&&i.set(0,0,1),a.crossVectors(s[0],i).normalize(),r[0].crossVectors(s[0],a),o[0].crossVectors(s[0],r[0]);for(let h=1;h<=t;h++){if(r[h]=r[h-1].clone(),o[h]=o[h-1].clone(),a.crossVectors(s[h-1],s[h]),a.length()>Number.EPSILON){a.normalize();let m=Math.acos(Vt(s[h-1].dot(s[h]),-1,1));r[h].applyMatrix4(l.makeRotationAxis(a,m))}o[h].crossVectors(s[h],r[h])}if(e===!0){let h=Math.acos(Vt(r[0].dot(r[t]),-1,1));h/=t,s[0].dot(a.crossVectors(r[0],r[t]))>0&&(h=-h);for(let m=1;m<=t;m++)r[m].applyMatrix4(l.makeRotationAxis(s[m],h*m)),o[m].crossVectors(s[m],r[m])}return{tangents:s,normals:r,binormals:o}}clone(){return new this.constructor().copy(this)}copy(t){return this.arcLengthDivisions=t.arcLengthDivisions,this.cacheArcLengths=null,this}toJSON(){let t={metadata:{version:4.7,type:"Curve",generator:"Curve.toJSON"}};return t.arcLengthDivisions=this.arcLengthDivisions,t.type=this.type,t}fromJSON(t){return this.arcLengthDivisions=t.arcLengthDivisions,this.cacheArcLengths=null,this}},yr=class extends En{constructor(t=0,e=0,i=1,s=1,r=0,o=Math.PI*2,a=!1,l=0){super(),this.isEllipseCurve=!0,this.type="EllipseCurve",this.aX=t,this.aY=e,this.xRadius=i,this.yRadius=s,this.aStartAngle=r,this.aEndAngle=o,this.aClockwise=a,this.aRotation=l}getPoint(t,e=new rt){let i=e,s=Math.PI*2,r=this.aEndAngle-this.aStartAngle,o=Math.abs(r)<Number.EPSILON;for(;r<0;)r+=s;for(;r>s;)r-=s;r<Number.EPSILON&&(o?r=0:r=s),this.aClockwise===!0&&!o&&(r===s?r=-s:r=r-s);let a=this.aStartAngle+t*r,l=this.aX+this.xRadius*Math.cos(a),c=this.aY+this.yRadius*Math.sin(a);if(this.aRotation!==0){let u=Math.cos(this.aRotation),f=Math.sin(this.aRotation),d=l-this.aX,h=c-this.aY;l=d*u-h*f+this.aX,c=d*f+h*u+this.aY}return i.set(l,c)}copy(t){return super.copy(t),this.aX=t.aX,this.aY=t.aY,this.xRadius=t.xRadius,this.yRadius=t.yRadius,this.aStartAngle=t.aStartAngle,this.aEndAngle=t.aEndAngle,this.aClockwise=t.aClockwise,this.aRotation=t.aRotation,this}toJSON(){let t=super.toJSON();return t.aX=this.aX,t.aY=this.aY,t.xRadius=this.xRadius,t.yRadius=this.yRadius,t.aStartAngle=this.aStartAngle,t.aEndAngle=this.aEndAngle,t.aClockwise=this.aClockwise,t.aRotation=this.aRotation,t}fromJSON(t){return super.fromJSON(t),this.aX=t.aX,this.aY=t.aY,this.xRadius=t.xRadius,this.yRadius=t.yRadius,this.aStartAngle=t.aStartAngle,this.aEndAngle=t.aEndAngle,this.aClockwise=t.aClockwise,this.aRotation=t.aRotation,this}},Bl=class extends yr{constructor(t,e,i,s,r,o){super(t,e,i,i,s,r,o),this.isArcCurve=!0,this.type="ArcCurve"}};function af(){let n=0,t=0,e=0,i=0;function s(r,o,a,l){n=r,t=a,e=-3*r+3*o-2*a-l,i=2*r-2*o+a+l}return{initCatmullRom:function(r,o,a,l,c){s(o,a,c*(a-r),c*(l-o))},initNonuniformCatmullRom:function(r,o,a,l,c,u,f){let d=(o-r)/c-(a-r)/(c+u)+(a-o)/u,h=(a-o)/u-(l-o)/(u+f)+(l-a)/f;d*=u,h*=u,s(o,a,d,h)},calc:function(r){let o=r*r,a=o*r;return n+t*r+e*o+i*a}}}var zp=new N,Vp=new N,vh=new af,yh=new af,xh=new af,kl=class extends En{constructor(t=[],e=!1,i="centripetal",s=.5){super(),this.isCatmullRomCurve3=!0,this.type="CatmullRomCurve3",this.points=t,this.closed=e,this.curveType=i,this.tension=s}getPoint(t,e=new N){let i=e,s=this.points,r=s.length,o=(r-(this.closed?0:1))*t,a=Math.floor(o),l=o-a;this.closed?a+=a>0?0:(Math.floor(Math.abs(a)/r)+1)*r:l===0&&a===r-1&&(a=r-2,l=1);let c,u;this.closed||a>0?c=s[(a-1)%r]:(Vp.subVectors(s[0],s[1]).add(s[0]),c=Vp);let f=s[a%r],d=s[(a+1)%r];if(this.closed||a+2<r?u=s[(a+2)%r]:(zp.subVectors(s[r-1],s[r-2]).add(s[r-1]),u=zp),this.curveType==="centripetal"||this.curveType==="chordal"){let h=this.curveType==="chordal"?.5:.25,m=Math.pow(c.distanceToSquared(f),h),y=Math.pow(f.distanceToSquared(d),h),g=Math.pow(d.distanceToSquared(u),h);y<1e-4&&(y=1),m<1e-4&&(m=y),g<1e-4&&(g=y),vh.initNonuniformCatmullRom(c.x,f.x,d.x,u.x,m,y,g),yh.initNonuniformCatmullRom(c.y,f.y,d.y,u.y,m,y,g),xh.initNonuniformCatmullRom(c.z,f.z,d.z,u.z,m,y,g)}else this.curveType==="catmullrom"&&(vh.initCatmullRom(c.x,f.x,d.x,u.x,this.tension),yh.initCatmullRom(c.y,f.y,d.y,u.y,this.tension),xh.initCatmullRom(c.z,f.z,d.z,u.z,this.tension));return i.set(vh.calc(l),yh.calc(l),xh.calc(l)),i}copy(t){super.copy(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(s.clone())}return this.closed=t.closed,this.curveType=t.curveType,this.tension=t.tension,this}toJSON(){let t=super.toJSON();t.points=[];for(let e=0,i=this.points.length;e<i;e++){let s=this.points[e];t.points.push(s.toArray())}return t.closed=this.closed,t.curveType=this.curveType,t.tension=this.tension,t}fromJSON(t){super.fromJSON(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(new N().fromArray(s))}return this.closed=t.closed,this.curveType=t.curveType,this.tension=t.tension,this}};function Gp(n,t,e,i,s){let r=(i-t)*.5,o=(s-e)*.5,a=n*n,l=n*a;return(2*e-2*i+r+o)*l+(-3*e+3*i-2*r-o)*a+r*n+e}function av(n,t){let e=1-n;return e*e*t}function lv(n,t){return 2*(1-n)*n*t}function cv(n,t){return n*n*t}function po(n,t,e,i){return av(n,t)+lv(n,e)+cv(n,i)}function uv(n,t){let e=1-n;return e*e*e*t}function hv(n,t){let e=1-n;return 3*e*e*n*t}function fv(n,t){return 3*(1-n)*n*n*t}function dv(n,t){return n*n*n*t}function mo(n,t,e,i,s){return uv(n,t)+hv(n,e)+fv(n,i)+dv(n,s)}var Io=class extends En{constructor(t=new rt,e=new rt,i=new rt,s=new rt){super(),this.isCubicBezierCurve=!0,this.type="CubicBezierCurve",this.v0=t,this.v1=e,this.v2=i,this.v3=s}getPoint(t,e=new rt){let i=e,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return i.set(mo(t,s.x,r.x,o.x,a.x),mo(t,s.y,r.y,o.y,a.y)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this.v3.copy(t.v3),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t.v3=this.v3.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this.v3.fromArray(t.v3),this}},zl=class extends En{constructor(t=new N,e=new N,i=new N,s=new N){super(),this.isCubicBezierCurve3=!0,this.type="CubicBezierCurve3",this.v0=t,this.v1=e,this.v2=i,this.v3=s}getPoint(t,e=new N){let i=e,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return i.set(mo(t,s.x,r.x,o.x,a.x),mo(t,s.y,r.y,o.y,a.y),mo(t,s.z,r.z,o.z,a.z)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this.v3.copy(t.v3),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t.v3=this.v3.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this.v3.fromArray(t.v3),this}},Do=class extends En{constructor(t=new rt,e=new rt){super(),this.isLineCurve=!0,this.type="LineCurve",this.v1=t,this.v2=e}getPoint(t,e=new rt){let i=e;return t===1?i.copy(this.v2):(i.copy(this.v2).sub(this.v1),i.multiplyScalar(t).add(this.v1)),i}getPointAt(t,e){return this.getPoint(t,e)}getTangent(t,e=new rt){return e.subVectors(this.v2,this.v1).normalize()}getTangentAt(t,e){return this.getTangent(t,e)}copy(t){return super.copy(t),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},Vl=class extends En{constructor(t=new N,e=new N){super(),this.isLineCurve3=!0,this.type="LineCurve3",this.v1=t,this.v2=e}getPoint(t,e=new N){let i=e;return t===1?i.copy(this.v2):(i.copy(this.v2).sub(this.v1),i.multiplyScalar(t).add(this.v1)),i}getPointAt(t,e){return this.getPoint(t,e)}getTangent(t,e=new N){return e.subVectors(this.v2,this.v1).normalize()}getTangentAt(t,e){return this.getTangent(t,e)}copy(t){return super.copy(t),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},Lo=class extends En{constructor(t=new rt,e=new rt,i=new rt){super(),this.isQuadraticBezierCurve=!0,this.type="QuadraticBezierCurve",this.v0=t,this.v1=e,this.v2=i}getPoint(t,e=new rt){let i=e,s=this.v0,r=this.v1,o=this.v2;return i.set(po(t,s.x,r.x,o.x),po(t,s.y,r.y,o.y)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},Gl=class extends En{constructor(t=new N,e=new N,i=new N){super(),this.isQuadraticBezierCurve3=!0,this.type="QuadraticBezierCurve3",this.v0=t,this.v1=e,this.v2=i}getPoint(t,e=new N){let i=e,s=this.v0,r=this.v1,o=this.v2;return i.set(po(t,s.x,r.x,o.x),po(t,s.y,r.y,o.y),po(t,s.z,r.z,o.z)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},No=class extends En{constructor(t=[]){super(),this.isSplineCurve=!0,this.type="SplineCurve",this.points=t}getPoint(t,e=new rt){let i=e,s=this.points,r=(s.length-1)*t,o=Math.floor(r),a=r-o,l=s[o===0?o:o-1],c=s[o],u=s[o>s.length-2?s.length-1:o+1],f=s[o>s.length-3?s.length-1:o+2];return i.set(Gp(a,l.x,c.x,u.x,f.x),Gp(a,l.y,c.y,u.y,f.y)),i}copy(t){super.copy(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(s.clone())}return this}toJSON(){let t=super.toJSON();t.points=[];for(let e=0,i=this.points.length;e<i;e++){let s=this.points[e];t.points.push(s.toArray())}return t}fromJSON(t){super.fromJSON(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(new rt().fromArray(s))}return this}},Hp=Object.freeze({__proto__:null,ArcCurve:Bl,CatmullRomCurve3:kl,CubicBezierCurve:Io,CubicBezierCurve3:zl,EllipseCurve:yr,LineCurve:Do,LineCurve3:Vl,QuadraticBezierCurve:Lo,QuadraticBezierCurve3:Gl,SplineCurve:No}),Hl=class extends En{constructor(){super(),this.type="CurvePath",this.curves=[],this.autoClose=!1,this.cacheLengths=null}add(t){this.curves.push(t)}closePath(){let t=this.curves[0].getPoint(0),e=this.curves[this.curves.length-1].getPoint(1);if(!t.equals(e)){let i=t.isVector2===!0?"LineCurve":"LineCurve3";this.curves.push(new Hp[i](e,t))}return this}getPoint(t,e){let i=t*this.getLength(),s=this.getCurveLengths(),r=0;for(;r<s.length;){if(s[r]>=i){let o=s[r]-i,a=this.curves[r],l=a.getLength(),c=l===0?0:1-o/l;return a.getPointAt(c,e)}r++}return null}getLength(){let t=this.getCurveLengths();return t[t.length-1]}updateArcLengths(){this.needsUpdate=!0,this.cacheLengths=null,this.getCurveLengths()}getCurveLengths(){if(this.cacheLengths&&this.cacheLengths.length===this.curves.length)return this.cacheLengths;let t=[],e=0;for(let i=0,s=this.curves.length;i<s;i++)e+=this.curves[i].getLength(),t.push(e);return this.cacheLengths=t,t}getSpacedPoints(t=40){let e=[];for(let i=0;i<=t;i++)e.push(this.getPoint(i/t));return this.autoClose&&e.push(e[0]),e}getPoints(t=12){let e=[],i;for(let s=0,r=this.curves;s<r.length;s++){let o=r[s],a=o.isEllipseCurve?t*2:o.isLineCurve||o.isLineCurve3?1:o.isSplineCurve?t*o.points.length:t,l=o.getPoints(a);for(let c=0;c<l.length;c++){let u=l[c];i&&i.equals(u)||(e.push(u),i=u)}}return this.autoClose&&e.length>1&&!e[e.length-1].equals(e[0])&&e.push(e[0]),e}copy(t){super.copy(t),this.curves=[];for(let e=0,i=t.curves.length;e<i;e++){let s=t.curves[e];this.curves.push(s.clone())}return this.autoClose=t.autoClose,this.cacheLengths=null,this}toJSON(){let t=super.toJSON();t.autoClose=this.autoClose,t.curves=[];for(let e=0,i=this.curves.length;e<i;e++){let s=this.curves[e];t.curves.push(s.toJSON())}return t}fromJSON(t){super.fromJSON(t),this.autoClose=t.autoClose,this.curves=[];for(let e=0,i=t.curves.length;e<i;e++){let s=t.curves[e];this.curves.push(new Hp[s.type]().fromJSON(s))}return this.cacheLengths=null,this}},Uo=class extends Hl{constructor(t){super(),this.type="Path",this.currentPoint=new rt,t&&this.setFromPoints(t)}setFromPoints(t){this.moveTo(t[0].x,t[0].y);for(let e=1,i=t.length;e<i;e++)this.lineTo(t[e].x,t[e].y);return this}moveTo(t,e){return this.currentPoint.set(t,e),this}lineTo(t,e){let i=new Do(this.currentPoint.clone(),new rt(t,e));return this.curves.push(i),this.currentPoint.set(t,e),this}quadraticCurveTo(t,e,i,s){let r=new Lo(this.currentPoint.clone(),new rt(t,e),new rt(i,s));return this.curves.push(r),this.currentPoint.set(i,s),this}bezierCurveTo(t,e,i,s,r,o){let a=new Io(this.currentPoint.clone(),new rt(t,e),new rt(i,s),new rt(r,o));return this.curves.push(a),this.currentPoint.set(r,o),this}splineThru(t){let e=[this.currentPoint.clone()].concat(t),i=new No(e);return this.curves.push(i),this.currentPoint.copy(t[t.length-1]),this}arc(t,e,i,s,r,o){let a=this.currentPoint.x,l=this.currentPoint.y;return this.absarc(t+a,e+l,i,s,r,o),this}absarc(t,e,i,s,r,o){return this.absellipse(t,e,i,i,s,r,o),this}ellipse(t,e,i,s,r,o,a,l){let c=this.currentPoint.x,u=this.currentPoint.y;return this.absellipse(t+c,e+u,i,s,r,o,a,l),this}absellipse(t,e,i,s,r,o,a,l){let c=new yr(t,e,i,s,r,o,a,l);if(this.curves.length>0){let f=c.getPoint(0);f.equals(this.currentPoint)||this.lineTo(f.x,f.y)}this.curves.push(c);let u=c.getPoint(1);return this.currentPoint.copy(u),this}copy(t){return super.copy(t),this.currentPoint.copy(t.currentPoint),this}toJSON(){let t=super.toJSON();return t.currentPoint=this.currentPoint.toArray(),t}fromJSON(t){return super.fromJSON(t),this.currentPoint.fromArray(t.currentPoint),this}},qi=class extends Uo{constructor(t){super(t),this.uuid=Cs(),this.type="Shape",this.holes=[]}getPointsHoles(t){let e=[];for(let i=0,s=this.holes.length;i<s;i++)e[i]=this.holes[i].getPoints(t);return e}extractPoints(t){return{shape:this.getPoints(t),holes:this.getPointsHoles(t)}}copy(t){super.copy(t),this.holes=[];for(let e=0,i=t.holes.length;e<i;e++){let s=t.holes[e];this.holes.push(s.clone())}return this}toJSON(){let t=super.toJSON();t.uuid=this.uuid,t.holes=[];for(let e=0,i=this.holes.length;e<i;e++){let s=this.holes[e];t.holes.push(s.toJSON())}return t}fromJSON(t){super.fromJSON(t),this.uuid=t.uuid,this.holes=[];for(let e=0,i=t.holes.length;e<i;e++){let s=t.holes[e];this.holes.push(new Uo().fromJSON(s))}return this}};function pv(n,t,e=2){let i=t&&t.length,s=i?t[0]*e:n.length,r=zm(n,0,s,e,!0),o=[];if(!r||r.next===r.prev)return o;let a,l,c;if(i&&(r=yv(n,t,r,e)),n.length>80*e){a=n[0],l=n[1];let u=a,f=l;for(let d=e;d<s;d+=e){let h=n[d],m=n[d+1];h<a&&(a=h),m<l&&(l=m),h>u&&(u=h),m>f&&(f=m)}c=Math.max(u-a,f-l),c=c!==0?32767/c:0}return Fo(r,o,e,a,l,c,0),o}function zm(n,t,e,i,s){let r;if(s===Pv(n,t,e,i)>0)for(let o=t;o<e;o+=i)r=Wp(o/i|0,n[o],n[o+1],r);else for(let o=e-i;o>=t;o-=i)r=Wp(o/i|0,n[o],n[o+1],r);return r&&xr(r,r.next)&&(Bo(r),r=r.next),r}function Ms(n,t){if(!n)return n;t||(t=n);let e=n,i;do if(i=!1,!e.steiner&&(xr(e,e.next)||Ae(e.prev,e,e.next)===0)){if(Bo(e),e=t=e.prev,e===e.next)break;i=!0}else e=e.next;while(i||e!==t);return t}function Fo(n,t,e,i,s,r,o){if(!n)return;!o&&r&&wv(n,i,s,r);let a=n;for(;n.prev!==n.next;){let l=n.prev,c=n.next;if(r?gv(n,i,s,r):mv(n)){t.push(l.i,n.i,c.i),Bo(n),n=c.next,a=c.next;continue}if(n=c,n===a){o?o===1?(n=_v(Ms(n),t),Fo(n,t,e,i,s,r,2)):o===2&&vv(n,t,e,i,s,r):Fo(Ms(n),t,e,i,s,r,1);break}}}function mv(n){let t=n.prev,e=n,i=n.next;if(Ae(t,e,i)>=0)return!1;let s=t.x,r=e.x,o=i.x,a=t.y,l=e.y,c=i.y,u=Math.min(s,r,o),f=Math.min(a,l,c),d=Math.max(s,r,o),h=Math.max(a,l,c),m=i.next;for(;m!==t;){if(m.x>=u&&m.x<=d&&m.y>=f&&m.y<=h&&co(s,a,r,l,o,c,m.x,m.y)&&Ae(m.prev,m,m.next)>=0)return!1;m=m.next}return!0}function gv(n,t,e,i){let s=n.prev,r=n,o=n.next;if(Ae(s,r,o)>=0)return!1;let a=s.x,l=r.x,c=o.x,u=s.y,f=r.y,d=o.y,h=Math.min(a,l,c),m=Math.min(u,f,d),y=Math.max(a,l,c),g=Math.max(u,f,d),p=Eh(h,m,t,e,i),v=Eh(y,g,t,e,i),M=n.prevZ,b=n.nextZ;for(;M&&M.z>=p&&b&&b.z<=v;){if(M.x>=h&&M.x<=y&&M.y>=m&&M.y<=g&&M!==s&&M!==o&&co(a,u,l,f,c,d,M.x,M.y)&&Ae(M.prev,M,M.next)>=0||(M=M.prevZ,b.x>=h&&b.x<=y&&b.y>=m&&b.y<=g&&b!==s&&b!==o&&co(a,u,l,f,c,d,b.x,b.y)&&Ae(b.prev,b,b.next)>=0))return!1;b=b.nextZ}for(;M&&M.z>=p;){if(M.x>=h&&M.x<=y&&M.y>=m&&M.y<=g&&M!==s&&M!==o&&co(a,u,l,f,c,d,M.x,M.y)&&Ae(M.prev,M,M.next)>=0)return!1;M=M.prevZ}for(;b&&b.z<=v;){if(b.x>=h&&b.x<=y&&b.y>=m&&b.y<=g&&b!==s&&b!==o&&co(a,u,l,f,c,d,b.x,b.y)&&Ae(b.prev,b,b.next)>=0)return!1;b=b.nextZ}return!0}function _v(n,t){let e=n;do{let i=e.prev,s=e.next.next;!xr(i,s)&&Gm(i,e,e.next,s)&&Oo(i,s)&&Oo(s,i)&&(t.push(i.i,e.i,s.i),Bo(e),Bo(e.next),e=n=s),e=e.next}while(e!==n);return Ms(e)}function vv(n,t,e,i,s,r){let o=n;do{let a=o.next.next;for(;a!==o.prev;){if(o.i!==a.i&&Ev(o,a)){let l=Hm(o,a);o=Ms(o,o.next),l=Ms(l,l.next),Fo(o,t,e,i,s,r,0),Fo(l,t,e,i,s,r,0);return}a=a.next}o=o.next}while(o!==n)}function yv(n,t,e,i){let s=[];for(let r=0,o=t.length;r<o;r++){let a=t[r]*i,l=r<o-1?t[r+1]*i:n.length,c=zm(n,a,l,i,!1);c===c.next&&(c.steiner=!0),s.push(Av(c))}s.sort(xv);for(let r=0;r<s.length;r++)e=bv(s[r],e);return e}function xv(n,t){let e=n.x-t.x;if(e===0&&(e=n.y-t.y,e===0)){let i=(n.next.y-n.y)/(n.next.x-n.x),s=(t.next.y-t.y)/(t.next.x-t.x);e=i-s}return e}function bv(n,t){let e=Mv(n,t);if(!e)return t;let i=Hm(e,n);return Ms(i,i.next),Ms(e,e.next)}function Mv(n,t){let e=t,i=n.x,s=n.y,r=-1/0,o;if(xr(n,e))return e;do{if(xr(n,e.next))return e.next;if(s<=e.y&&s>=e.next.y&&e.next.y!==e.y){let f=e.x+(s-e.y)*(e.next.x-e.x)/(e.next.y-e.y);if(f<=i&&f>r&&(r=f,o=e.x<e.next.x?e:e.next,f===i))return o}e=e.next}while(e!==t);if(!o)return null;let a=o,l=o.x,c=o.y,u=1/0;e=o;do{if(i>=e.x&&e.x>=l&&i!==e.x&&Vm(s<c?i:r,s,l,c,s<c?r:i,s,e.x,e.y)){let f=Math.abs(s-e.y)/(i-e.x);Oo(e,n)&&(f<u||f===u&&(e.x>o.x||e.x===o.x&&Sv(o,e)))&&(o=e,u=f)}e=e.next}while(e!==a);return o}function Sv(n,t){return Ae(n.prev,n,t.prev)<0&&Ae(t.next,n,n.next)<0}function wv(n,t,e,i){let s=n;do s.z===0&&(s.z=Eh(s.x,s.y,t,e,i)),s.prevZ=s.prev,s.nextZ=s.next,s=s.next;while(s!==n);s.prevZ.nextZ=null,s.prevZ=null,Tv(s)}function Tv(n){let t,e=1;do{let i=n,s;n=null;let r=null;for(t=0;i;){t++;let o=i,a=0;for(let c=0;c<e&&(a++,o=o.nextZ,!!o);c++);let l=e;for(;a>0||l>0&&o;)a!==0&&(l===0||!o||i.z<=o.z)?(s=i,i=i.nextZ,a--):(s=o,o=o.nextZ,l--),r?r.nextZ=s:n=s,s.prevZ=r,r=s;i=o}r.nextZ=null,e*=2}while(t>1);return n}function Eh(n,t,e,i,s){return n=(n-e)*s|0,t=(t-i)*s|0,n=(n|n<<8)&16711935,n=(n|n<<4)&252645135,n=(n|n<<2)&858993459,n=(n|n<<1)&1431655765,t=(t|t<<8)&16711935,t=(t|t<<4)&252645135,t=(t|t<<2)&858993459,t=(t|t<<1)&1431655765,n|t<<1}function Av(n){let t=n,e=n;do(t.x<e.x||t.x===e.x&&t.y<e.y)&&(e=t),t=t.next;while(t!==n);return e}function Vm(n,t,e,i,s,r,o,a){return(s-o)*(t-a)>=(n-o)*(r-a)&&(n-o)*(i-a)>=(e-o)*(t-a)&&(e-o)*(r-a)>=(s-o)*(i-a)}function co(n,t,e,i,s,r,o,a){return!(n===o&&t===a)&&Vm(n,t,e,i,s,r,o,a)}function Ev(n,t){return n.next.i!==t.i&&n.prev.i!==t.i&&!Cv(n,t)&&(Oo(n,t)&&Oo(t,n)&&Rv(n,t)&&(Ae(n.prev,n,t.prev)||Ae(n,t.prev,t))||xr(n,t)&&Ae(n.prev,n,n.next)>0&&Ae(t.prev,t,t.next)>0)}function Ae(n,t,e){return(t.y-n.y)*(e.x-t.x)-(t.x-n.x)*(e.y-t.y)}function xr(n,t){return n.x===t.x&&n.y===t.y}function Gm(n,t,e,i){let s=ml(Ae(n,t,e)),r=ml(Ae(n,t,i)),o=ml(Ae(e,i,n)),a=ml(Ae(e,i,t));return!!(s!==r&&o!==a||s===0&&pl(n,e,t)||r===0&&pl(n,i,t)||o===0&&pl(e,n,i)||a===0&&pl(e,t,i))}function pl(n,t,e){return t.x<=Math.max(n.x,e.x)&&t.x>=Math.min(n.x,e.x)&&t.y<=Math.max(n.y,e.y)&&t.y>=Math.min(n.y,e.y)}function ml(n){return n>0?1:n<0?-1:0}function Cv(n,t){let e=n;do{if(e.i!==n.i&&e.next.i!==n.i&&e.i!==t.i&&e.next.i!==t.i&&Gm(e,e.next,n,t))return!0;e=e.next}while(e!==n);return!1}function Oo(n,t){return Ae(n.prev,n,n.next)<0?Ae(n,t,n.next)>=0&&Ae(n,n.prev,t)>=0:Ae(n,t,n.prev)<0||Ae(n,n.next,t)<0}function Rv(n,t){let e=n,i=!1,s=(n.x+t.x)/2,r=(n.y+t.y)/2;do e.y>r!=e.next.y>r&&e.next.y!==e.y&&s<(e.next.x-e.x)*(r-e.y)/(e.next.y-e.y)+e.x&&(i=!i),e=e.next;while(e!==n);return i}function Hm(n,t){let e=Ch(n.i,n.x,n.y),i=Ch(t.i,t.x,t.y),s=n.next,r=t.prev;return n.next=t,t.prev=n,e.next=s,s.prev=e,i.next=e,e.prev=i,r.next=i,i.prev=r,i}function Wp(n,t,e,i){let s=Ch(n,t,e);return i?(s.next=i.next,s.prev=i,i.next.prev=s,i.next=s):(s.prev=s,s.next=s),s}function Bo(n){n.next.prev=n.prev,n.prev.next=n.next,n.prevZ&&(n.prevZ.nextZ=n.nextZ),n.nextZ&&(n.nextZ.prevZ=n.prevZ)}function Ch(n,t,e){return{i:n,x:t,y:e,prev:null,next:null,z:0,prevZ:null,nextZ:null,steiner:!1}}function Pv(n,t,e,i){let s=0;for(let r=t,o=e-i;r<e;r+=i)s+=(n[o]-n[r])*(n[r+1]+n[o+1]),o=r;return s}var Rh=class{static triangulate(t,e,i=2){return pv(t,e,i)}},ur=class n{static area(t){let e=t.length,i=0;for(let s=e-1,r=0;r<e;s=r++)i+=t[s].x*t[r].y-t[r].x*t[s].y;return i*.5}static isClockWise(t){return n.area(t)<0}static triangulateShape(t,e){let i=[],s=[],r=[];Xp(t),qp(i,t);let o=t.length;e.forEach(Xp);for(let l=0;l<e.length;l++)s.push(o),o+=e[l].length,qp(i,e[l]);let a=Rh.triangulate(i,s);for(let l=0;l<a.length;l+=3)r.push(a.slice(l,l+3));return r}};function Xp(n){let t=n.length;t>2&&n[t-1].equals(n[0])&&n.pop()}function qp(n,t){for(let e=0;e<t.length;e++)n.push(t[e].x),n.push(t[e].y)}var ko=class n extends ce{constructor(t=[new rt(0,-.5),new rt(.5,0),new rt(0,.5)],e=12,i=0,s=Math.PI*2){super(),this.type="LatheGeometry",this.parameters={points:t,segments:e,phiStart:i,phiLength:s},e=Math.floor(e),s=Vt(s,0,Math.PI*2);let r=[],o=[],a=[],l=[],c=[],u=1/e,f=new N,d=new rt,h=new N,m=new N,y=new N,g=0,p=0;for(let v=0;v<=t.length-1;v++)switch(v){case 0:g=t[v+1].x-t[v].x,p=t[v+1].y-t[v].y,h.x=p*1,h.y=-g,h.z=p*0,y.copy(h),h.normalize(),l.push(h.x,h.y,h.z);break;case t.length-1:y.normalize(),l.push(y.x,y.y,y.z);break;default:g=t[v+1].x-t[v].x,p=t[v+1].y-t[v].y,h.x=p*1,h.y=-g,h.z=p*0,m.copy(h),h.x+=y.x,h.y+=y.y,h.z+=y.z,h.normalize(),l.push(h.x,h.y,h.z),y.copy(m)}for(let v=0;v<=e;v++){let M=i+v*u*s,b=Math.sin(M),E=Math.cos(M);for(let A=0;A<=t.length-1;A++){f.x=t[A].x*b,f.y=t[A].y,f.z=t[A].x*E,o.push(f.x,f.y,f.z),d.x=v/e,d.y=A/(t.length-1),a.push(d.x,d.y);let x=l[3*A+0]*b,T=l[3*A+1],D=l[3*A+0]*E;c.push(x,T,D)}}for(let v=0;v<e;v++)for(let M=0;M<t.length-1;M++){let b=M+v*t.length,E=b,A=b+t.length,x=b+t.length+1,T=b+1;r.push(E,A,T),r.push(x,T,A)}this.setIndex(r),this.setAttribute("position",new Xt(o,3)),this.setAttribute("uv",new Xt(a,2)),this.setAttribute("normal",new Xt(c,3))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.points,t.segments,t.phiStart,t.phiLength)}};var zo=class n extends ce{constructor(t=1,e=1,i=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:t,height:e,widthSegments:i,heightSegments:s};let r=t/2,o=e/2,a=Math.floor(i),l=Math.floor(s),c=a+1,u=l+1,f=t/a,d=e/l,h=[],m=[],y=[],g=[];for(let p=0;p<u;p++){let v=p*d-o;for(let M=0;M<c;M++){let b=M*f-r;m.push(b,-v,0),y.push(0,0,1),g.push(M/a),g.push(1-p/l)}}for(let p=0;p<l;p++)for(let v=0;v<a;v++){let M=v+c*p,b=v+c*(p+1),E=v+1+c*(p+1),A=v+1+c*p;h.push(M,b,A),h.push(b,E,A)}this.setIndex(h),this.setAttribute("position",new Xt(m,3)),this.setAttribute("normal",new Xt(y,3)),this.setAttribute("uv",new Xt(g,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.width,t.height,t.widthSegments,t.heightSegments)}};var br=class n extends ce{constructor(t=new qi([new rt(0,.5),new rt(-.5,-.5),new rt(.5,-.5)]),e=12){super(),this.type="ShapeGeometry",this.parameters={shapes:t,curveSegments:e};let i=[],s=[],r=[],o=[],a=0,l=0;if(Array.isArray(t)===!1)c(t);else for(let u=0;u<t.length;u++)c(t[u]),this.addGroup(a,l,u),a+=l,l=0;this.setIndex(i),this.setAttribute("position",new Xt(s,3)),this.setAttribute("normal",new Xt(r,3)),this.setAttribute("uv",new Xt(o,2));function c(u){let f=s.length/3,d=u.extractPoints(e),h=d.shape,m=d.holes;ur.isClockWise(h)===!1&&(h=h.reverse());for(let g=0,p=m.length;g<p;g++){let v=m[g];ur.isClockWise(v)===!0&&(m[g]=v.reverse())}let y=ur.triangulateShape(h,m);for(let g=0,p=m.length;g<p;g++){let v=m[g];h=h.concat(v)}for(let g=0,p=h.length;g<p;g++){let v=h[g];s.push(v.x,v.y,0),r.push(0,0,1),o.push(v.x,v.y)}for(let g=0,p=y.length;g<p;g++){let v=y[g],M=v[0]+f,b=v[1]+f,E=v[2]+f;i.push(M,b,E),l+=3}}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}toJSON(){let t=super.toJSON(),e=this.parameters.shapes;return Iv(e,t)}static fromJSON(t,e){let i=[];for(let s=0,r=t.shapes.length;s<r;s++){let o=e[t.shapes[s]];i.push(o)}return new n(i,t.curveSegments)}};function Iv(n,t){if(t.shapes=[],Array.isArray(n))for(let e=0,i=n.length;e<i;e++){let s=n[e];t.shapes.push(s.uuid)}else t.shapes.push(n.uuid);return t}var Yi=class n extends ce{constructor(t=1,e=32,i=16,s=0,r=Math.PI*2,o=0,a=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:t,widthSegments:e,heightSegments:i,phiStart:s,phiLength:r,thetaStart:o,thetaLength:a},e=Math.max(3,Math.floor(e)),i=Math.max(2,Math.floor(i));let l=Math.min(o+a,Math.PI),c=0,u=[],f=new N,d=new N,h=[],m=[],y=[],g=[];for(let p=0;p<=i;p++){let v=[],M=p/i,b=o+M*a,E=t*Math.cos(b),A=Math.sqrt(t*t-E*E),x=0;p===0&&o===0?x=.5/e:p===i&&l===Math.PI&&(x=-.5/e);for(let T=0;T<=e;T++){let D=T/e,R=s+D*r;f.x=-A*Math.cos(R),f.y=E,f.z=A*Math.sin(R),m.push(f.x,f.y,f.z),d.copy(f).normalize(),y.push(d.x,d.y,d.z),g.push(D+x,1-M),v.push(c++)}u.push(v)}for(let p=0;p<i;p++)for(let v=0;v<e;v++){let M=u[p][v+1],b=u[p][v],E=u[p+1][v],A=u[p+1][v+1];(p!==0||o>0)&&h.push(M,b,A),(p!==i-1||l<Math.PI)&&h.push(b,E,A)}this.setIndex(h),this.setAttribute("position",new Xt(m,3)),this.setAttribute("normal",new Xt(y,3)),this.setAttribute("uv",new Xt(g,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radius,t.widthSegments,t.heightSegments,t.phiStart,t.phiLength,t.thetaStart,t.thetaLength)}};var Vo=class n extends ce{constructor(t=1,e=.4,i=12,s=48,r=Math.PI*2,o=0,a=Math.PI*2){super(),this.type="TorusGeometry",this.parameters={radius:t,tube:e,radialSegments:i,tubularSegments:s,arc:r,thetaStart:o,thetaLength:a},i=Math.floor(i),s=Math.floor(s);let l=[],c=[],u=[],f=[],d=new N,h=new N,m=new N;for(let y=0;y<=i;y++){let g=o+y/i*a;for(let p=0;p<=s;p++){let v=p/s*r;h.x=(t+e*Math.cos(g))*Math.cos(v),h.y=(t+e*Math.cos(g))*Math.sin(v),h.z=e*Math.sin(g),c.push(h.x,h.y,h.z),d.x=t*Math.cos(v),d.y=t*Math.sin(v),m.subVectors(h,d).normalize(),u.push(m.x,m.y,m.z),f.push(p/s),f.push(y/i)}}for(let y=1;y<=i;y++)for(let g=1;g<=s;g++){let p=(s+1)*y+g-1,v=(s+1)*(y-1)+g-1,M=(s+1)*(y-1)+g,b=(s+1)*y+g;l.push(p,v,b),l.push(v,M,b)}this.setIndex(l),this.setAttribute("position",new Xt(c,3)),this.setAttribute("normal",new Xt(u,3)),this.setAttribute("uv",new Xt(f,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radius,t.tube,t.radialSegments,t.tubularSegments,t.arc,t.thetaStart,t.thetaLength)}};function Rs(n){let t={};for(let e in n){t[e]={};for(let i in n[e]){let s=n[e][i];if(Yp(s))s.isRenderTargetTexture?(Rt("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),t[e][i]=null):t[e][i]=s.clone();else if(Array.isArray(s))if(Yp(s[0])){let r=[];for(let o=0,a=s.length;o<a;o++)r[o]=s[o].clone();t[e][i]=r}else t[e][i]=s.slice();else t[e][i]=s}}return t}function an(n){let t={};for(let e=0;e<n.length;e++){let i=Rs(n[e]);for(let s in i)t[s]=i[s]}return t}function Yp(n){return n&&(n.isColor||n.isMatrix3||n.isMatrix4||n.isVector2||n.isVector3||n.isVector4||n.isTexture||n.isQuaternion)}function Dv(n){let t=[];for(let e=0;e<n.length;e++)t.push(n[e].clone());return t}function lf(n){let t=n.getRenderTarget();return t===null?n.outputColorSpace:t.isXRRenderTarget===!0?t.texture.colorSpace:Jt.workingColorSpace}var Wm={clone:Rs,merge:an},Lv=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,Nv=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`,Cn=class extends li{constructor(t){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=Lv,this.fragmentShader=Nv,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,t!==void 0&&this.setValues(t)}copy(t){return super.copy(t),this.fragmentShader=t.fragmentShader,this.vertexShader=t.vertexShader,this.uniforms=Rs(t.uniforms),this.uniformsGroups=Dv(t.uniformsGroups),this.defines=Object.assign({},t.defines),this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.fog=t.fog,this.lights=t.lights,this.clipping=t.clipping,this.extensions=Object.assign({},t.extensions),this.glslVersion=t.glslVersion,this.defaultAttributeValues=Object.assign({},t.defaultAttributeValues),this.index0AttributeName=t.index0AttributeName,this.uniformsNeedUpdate=t.uniformsNeedUpdate,this}toJSON(t){let e=super.toJSON(t);e.glslVersion=this.glslVersion,e.uniforms={};for(let s in this.uniforms){let o=this.uniforms[s].value;o&&o.isTexture?e.uniforms[s]={type:"t",value:o.toJSON(t).uuid}:o&&o.isColor?e.uniforms[s]={type:"c",value:o.getHex()}:o&&o.isVector2?e.uniforms[s]={type:"v2",value:o.toArray()}:o&&o.isVector3?e.uniforms[s]={type:"v3",value:o.toArray()}:o&&o.isVector4?e.uniforms[s]={type:"v4",value:o.toArray()}:o&&o.isMatrix3?e.uniforms[s]={type:"m3",value:o.toArray()}:o&&o.isMatrix4?e.uniforms[s]={type:"m4",value:o.toArray()}:e.uniforms[s]={value:o}}Object.keys(this.defines).length>0&&(e.defines=this.defines),e.vertexShader=this.vertexShader,e.fragmentShader=this.fragmentShader,e.lights=this.lights,e.clipping=this.clipping;let i={};for(let s in this.extensions)this.extensions[s]===!0&&(i[s]=!0);return Object.keys(i).length>0&&(e.extensions=i),e}fromJSON(t,e){if(super.fromJSON(t,e),t.uniforms!==void 0)for(let i in t.uniforms){let s=t.uniforms[i];switch(this.uniforms[i]={},s.type){case"t":this.uniforms[i].value=e[s.value]||null;break;case"c":this.uniforms[i].value=new kt().setHex(s.value);break;case"v2":this.uniforms[i].value=new rt().fromArray(s.value);break;case"v3":this.uniforms[i].value=new N().fromArray(s.value);break;case"v4":this.uniforms[i].value=new Se().fromArray(s.value);break;case"m3":this.uniforms[i].value=new Ft().fromArray(s.value);break;case"m4":this.uniforms[i].value=new Qt().fromArray(s.value);break;default:this.uniforms[i].value=s.value}}if(t.defines!==void 0&&(this.defines=t.defines),t.vertexShader!==void 0&&(this.vertexShader=t.vertexShader),t.fragmentShader!==void 0&&(this.fragmentShader=t.fragmentShader),t.glslVersion!==void 0&&(this.glslVersion=t.glslVersion),t.extensions!==void 0)for(let i in t.extensions)this.extensions[i]=t.extensions[i];return t.lights!==void 0&&(this.lights=t.lights),t.clipping!==void 0&&(this.clipping=t.clipping),this}},Wl=class extends Cn{constructor(t){super(t),this.isRawShaderMaterial=!0,this.type="RawShaderMaterial"}};var Ss=class extends li{constructor(t){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new kt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new kt(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=qc,this.normalScale=new rt(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Ti,this.combine=rc,this.reflectivity=1,this.envMapIntensity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.emissive.copy(t.emissive),this.emissiveMap=t.emissiveMap,this.emissiveIntensity=t.emissiveIntensity,this.bumpMap=t.bumpMap,this.bumpScale=t.bumpScale,this.normalMap=t.normalMap,this.normalMapType=t.normalMapType,this.normalScale.copy(t.normalScale),this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.envMapIntensity=t.envMapIntensity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.flatShading=t.flatShading,this.fog=t.fog,this}},Xl=class extends li{constructor(t){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=wm,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(t)}copy(t){return super.copy(t),this.depthPacking=t.depthPacking,this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this}},ql=class extends li{constructor(t){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(t)}copy(t){return super.copy(t),this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this}};function or(n,t){return!n||n.constructor===t?n:typeof t.BYTES_PER_ELEMENT=="number"?new t(n):Array.prototype.slice.call(n)}function gl(n){return n!==void 0&&n.inTangents!==void 0&&n.outTangents!==void 0}var $i=class{constructor(t,e,i,s){this.parameterPositions=t,this._cachedIndex=0,this.resultBuffer=s!==void 0?s:new e.constructor(i),this.sampleValues=e,this.valueSize=i,this.settings=null,this.DefaultSettings_={}}evaluate(t){let e=this.parameterPositions,i=this._cachedIndex,s=e[i],r=e[i-1];t:{e:{let o;n:{i:if(!(t<s)){for(let a=i+2;;){if(s===void 0){if(t<r)break i;return i=e.length,this._cachedIndex=i,this.copySampleValue_(i-1)}if(i===a)break;if(r=s,s=e[++i],t<s)break e}o=e.length;break n}if(!(t>=r)){let a=e[1];t<a&&(i=2,r=a);for(let l=i-2;;){if(r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(i===l)break;if(s=r,r=e[--i-1],t>=r)break e}o=i,i=0;break n}break t}for(;i<o;){let a=i+o>>>1;t<e[a]?o=a:i=a+1}if(s=e[i],r=e[i-1],r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(s===void 0)return i=e.length,this._cachedIndex=i,this.copySampleValue_(i-1)}this._cachedIndex=i,this.intervalChanged_(i,r,s)}return this.interpolate_(i,r,t,s)}getSettings_(){return this.settings||this.DefaultSettings_}copySampleValue_(t){let e=this.resultBuffer,i=this.sampleValues,s=this.valueSize,r=t*s;for(let o=0;o!==s;++o)e[o]=i[r+o];return e}interpolate_(){throw new Error("THREE.Interpolant: Call to abstract method.")}intervalChanged_(){}},Yl=class extends $i{constructor(t,e,i,s){super(t,e,i,s),this._weightPrev=-0,this._offsetPrev=-0,this._weightNext=-0,this._offsetNext=-0,this.DefaultSettings_={endingStart:Sh,endingEnd:Sh}}intervalChanged_(t,e,i){let s=this.parameterPositions,r=t-2,o=t+1,a=s[r],l=s[o];if(a===void 0)switch(this.getSettings_().endingStart){case wh:r=t,a=2*e-i;break;case Th:r=s.length-2,a=e+s[r]-s[r+1];break;default:r=t,a=i}if(l===void 0)switch(this.getSettings_().endingEnd){case wh:o=t,l=2*i-e;break;case Th:o=1,l=i+s[1]-s[0];break;default:o=t-1,l=e}let c=(i-e)*.5,u=this.valueSize;this._weightPrev=c/(e-a),this._weightNext=c/(l-i),this._offsetPrev=r*u,this._offsetNext=o*u}interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,c=l-a,u=this._offsetPrev,f=this._offsetNext,d=this._weightPrev,h=this._weightNext,m=(i-e)/(s-e),y=m*m,g=y*m,p=-d*g+2*d*y-d*m,v=(1+d)*g+(-1.5-2*d)*y+(-.5+d)*m+1,M=(-1-h)*g+(1.5+h)*y+.5*m,b=h*g-h*y;for(let E=0;E!==a;++E)r[E]=p*o[u+E]+v*o[c+E]+M*o[l+E]+b*o[f+E];return r}},$l=class extends $i{constructor(t,e,i,s){super(t,e,i,s)}interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,c=l-a,u=(i-e)/(s-e),f=1-u;for(let d=0;d!==a;++d)r[d]=o[c+d]*f+o[l+d]*u;return r}},Zl=class extends $i{constructor(t,e,i,s){super(t,e,i,s)}interpolate_(t){return this.copySampleValue_(t-1)}},Jl=class extends $i{interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,c=l-a,u=this.inTangents,f=this.outTangents;if(!u||!f){let m=(i-e)/(s-e),y=1-m;for(let g=0;g!==a;++g)r[g]=o[c+g]*y+o[l+g]*m;return r}let d=a*2,h=t-1;for(let m=0;m!==a;++m){let y=o[c+m],g=o[l+m],p=h*d+m*2,v=f[p],M=f[p+1],b=t*d+m*2,E=u[b],A=u[b+1],x=Fv(i,e,v,E,s);r[m]=Xm(x,y,M,A,g)}return r}};function Xm(n,t,e,i,s){let r=1-n;return r*r*r*t+3*r*r*n*e+3*r*n*n*i+n*n*n*s}function Uv(n,t,e,i,s){let r=1-n;return 3*r*r*(e-t)+6*r*n*(i-e)+3*n*n*(s-i)}function Fv(n,t,e,i,s){let r=(n-t)/(s-t);for(let o=0;o<8;o++){let a=Xm(r,t,e,i,s)-n;if(Math.abs(a)<1e-10)break;let l=Uv(r,t,e,i,s);if(Math.abs(l)<1e-10)break;r=Math.max(0,Math.min(1,r-a/l))}return r}var Rn=class{constructor(t,e,i,s){if(t===void 0)throw new Error("THREE.KeyframeTrack: track name is undefined");if(e===void 0||e.length===0)throw new Error("THREE.KeyframeTrack: no keyframes in track named "+t);this.name=t,this.times=or(e,this.TimeBufferType),this.values=or(i,this.ValueBufferType),this.setInterpolation(s||this.DefaultInterpolation)}static toJSON(t){let e=t.constructor,i;if(e.toJSON!==this.toJSON)i=e.toJSON(t);else{i={name:t.name,times:or(t.times,Array),values:or(t.values,Array)};let s=t.getInterpolation();s!==t.DefaultInterpolation&&(i.interpolation=s),gl(t.settings)&&(i.settings={inTangents:or(t.settings.inTangents,Array),outTangents:or(t.settings.outTangents,Array)})}return i.type=t.ValueTypeName,i}InterpolantFactoryMethodDiscrete(t){return new Zl(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodLinear(t){return new $l(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodSmooth(t){return new Yl(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodBezier(t){let e=new Jl(this.times,this.values,this.getValueSize(),t);return this.settings&&(e.inTangents=this.settings.inTangents,e.outTangents=this.settings.outTangents),e}setInterpolation(t){let e;switch(t){case go:e=this.InterpolantFactoryMethodDiscrete;break;case Pl:e=this.InterpolantFactoryMethodLinear;break;case yl:e=this.InterpolantFactoryMethodSmooth;break;case Mh:e=this.InterpolantFactoryMethodBezier;break}if(e===void 0){let i="unsupported interpolation for "+this.ValueTypeName+" keyframe track named "+this.name;if(this.createInterpolant===void 0)if(t!==this.DefaultInterpolation)this.setInterpolation(this.DefaultInterpolation);else throw new Error(i);return Rt("KeyframeTrack:",i),this}return this.createInterpolant=e,this}getInterpolation(){switch(this.createInterpolant){case this.InterpolantFactoryMethodDiscrete:return go;case this.InterpolantFactoryMethodLinear:return Pl;case this.InterpolantFactoryMethodSmooth:return yl;case this.InterpolantFactoryMethodBezier:return Mh}}getValueSize(){return this.values.length/this.times.length}shift(t){if(t!==0){let e=this.times;for(let i=0,s=e.length;i!==s;++i)e[i]+=t;gl(this.settings)&&($p(this.settings.inTangents,t),$p(this.settings.outTangents,t))}return this}scale(t){if(t!==1){let e=this.times;for(let i=0,s=e.length;i!==s;++i)e[i]*=t;gl(this.settings)&&(Zp(this.settings.inTangents,t),Zp(this.settings.outTangents,t))}return this}trim(t,e){let i=this.times,s=i.length,r=0,o=s-1;for(;r!==s&&i[r]<t;)++r;for(;o!==-1&&i[o]>e;)--o;if(++o,r!==0||o!==s){r>=o&&(o=Math.max(o,1),r=o-1);let a=this.getValueSize();this.times=i.slice(r,o),this.values=this.values.slice(r*a,o*a)}return this}validate(){let t=!0,e=this.getValueSize();e-Math.floor(e)!==0&&(Nt("KeyframeTrack: Invalid value size in track.",this),t=!1);let i=this.times,s=this.values,r=i.length;r===0&&(Nt("KeyframeTrack: Track is empty.",this),t=!1);let o=null;for(let a=0;a!==r;a++){let l=i[a];if(typeof l=="number"&&isNaN(l)){Nt("KeyframeTrack: Time is not a valid number.",this,a,l),t=!1;break}if(o!==null&&o>l){Nt("KeyframeTrack: Out of order keys.",this,a,l,o),t=!1;break}o=l}if(s!==void 0&&A_(s))for(let a=0,l=s.length;a!==l;++a){let c=s[a];if(isNaN(c)){Nt("KeyframeTrack: Value is not a valid number.",this,a,c),t=!1;break}}return t}optimize(){let t=this.times.slice(),e=this.values.slice(),i=this.getValueSize(),s=this.getInterpolation()===yl,r=t.length-1,o=1;for(let a=1;a<r;++a){let l=!1,c=t[a],u=t[a+1];if(c!==u&&(a!==1||c!==t[0]))if(s)l=!0;else{let f=a*i,d=f-i,h=f+i;for(let m=0;m!==i;++m){let y=e[f+m];if(y!==e[d+m]||y!==e[h+m]){l=!0;break}}}if(l){if(a!==o){t[o]=t[a];let f=a*i,d=o*i;for(let h=0;h!==i;++h)e[d+h]=e[f+h]}++o}}if(r>0){t[o]=t[r];for(let a=r*i,l=o*i,c=0;c!==i;++c)e[l+c]=e[a+c];++o}return o!==t.length?(this.times=t.slice(0,o),this.values=e.slice(0,o*i)):(this.times=t,this.values=e),this}clone(){let t=this.times.slice(),e=this.values.slice(),i=this.constructor,s=new i(this.name,t,e);return s.createInterpolant=this.createInterpolant,gl(this.settings)&&(s.settings={inTangents:this.settings.inTangents.slice(),outTangents:this.settings.outTangents.slice()}),s}};function $p(n,t){for(let e=0,i=n.length;e!==i;e+=2)n[e]+=t}function Zp(n,t){for(let e=0,i=n.length;e!==i;e+=2)n[e]*=t}Rn.prototype.ValueTypeName="";Rn.prototype.TimeBufferType=Float32Array;Rn.prototype.ValueBufferType=Float32Array;Rn.prototype.DefaultInterpolation=Pl;var Zi=class extends Rn{constructor(t,e,i){super(t,e,i)}};Zi.prototype.ValueTypeName="bool";Zi.prototype.ValueBufferType=Array;Zi.prototype.DefaultInterpolation=go;Zi.prototype.InterpolantFactoryMethodLinear=void 0;Zi.prototype.InterpolantFactoryMethodSmooth=void 0;var Kl=class extends Rn{constructor(t,e,i,s){super(t,e,i,s)}};Kl.prototype.ValueTypeName="color";var jl=class extends Rn{constructor(t,e,i,s){super(t,e,i,s)}};jl.prototype.ValueTypeName="number";var Ql=class extends $i{constructor(t,e,i,s){super(t,e,i,s)}interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=(i-e)/(s-e),c=t*a;for(let u=c+a;c!==u;c+=4)Be.slerpFlat(r,0,o,c-a,o,c,l);return r}},Go=class extends Rn{constructor(t,e,i,s){super(t,e,i,s)}InterpolantFactoryMethodLinear(t){return new Ql(this.times,this.values,this.getValueSize(),t)}};Go.prototype.ValueTypeName="quaternion";Go.prototype.InterpolantFactoryMethodSmooth=void 0;var Ji=class extends Rn{constructor(t,e,i){super(t,e,i)}};Ji.prototype.ValueTypeName="string";Ji.prototype.ValueBufferType=Array;Ji.prototype.DefaultInterpolation=go;Ji.prototype.InterpolantFactoryMethodLinear=void 0;Ji.prototype.InterpolantFactoryMethodSmooth=void 0;var tc=class extends Rn{constructor(t,e,i,s){super(t,e,i,s)}};tc.prototype.ValueTypeName="vector";var ec=class{constructor(t,e,i){let s=this,r=!1,o=0,a=0,l,c=[];this.onStart=void 0,this.onLoad=t,this.onProgress=e,this.onError=i,this._abortController=null,this.itemStart=function(u){a++,r===!1&&s.onStart!==void 0&&s.onStart(u,o,a),r=!0},this.itemEnd=function(u){o++,s.onProgress!==void 0&&s.onProgress(u,o,a),o===a&&(r=!1,s.onLoad!==void 0&&s.onLoad())},this.itemError=function(u){s.onError!==void 0&&s.onError(u)},this.resolveURL=function(u){return u=u.normalize("NFC"),l?l(u):u},this.setURLModifier=function(u){return l=u,this},this.addHandler=function(u,f){return c.push(u,f),this},this.removeHandler=function(u){let f=c.indexOf(u);return f!==-1&&c.splice(f,2),this},this.getHandler=function(u){for(let f=0,d=c.length;f<d;f+=2){let h=c[f],m=c[f+1];if(h.global&&(h.lastIndex=0),h.test(u))return m}return null},this.abort=function(){return this.abortController.abort(),this._abortController=null,this}}get abortController(){return this._abortController||(this._abortController=new AbortController),this._abortController}},qm=new ec,nc=class{constructor(t){this.manager=t!==void 0?t:qm,this.crossOrigin="anonymous",this.withCredentials=!1,this.path="",this.resourcePath="",this.requestHeader={},this.priority="auto",this.cache="default",typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}load(){}loadAsync(t,e){let i=this;return new Promise(function(s,r){i.load(t,s,e,r)})}parse(){}setCrossOrigin(t){return this.crossOrigin=t,this}setWithCredentials(t){return this.withCredentials=t,this}setPath(t){return this.path=t,this}setResourcePath(t){return this.resourcePath=t,this}setRequestHeader(t){return this.requestHeader=t,this}setPriority(t){return this.priority=t,this}setCache(t){return this.cache=t,this}abort(){return this}};nc.DEFAULT_MATERIAL_NAME="__DEFAULT";var Ho=class extends Ye{static registerNode(t){this.prototype._lightNode=t}constructor(t,e=1){super(),this.isLight=!0,this.type="Light",this.color=new kt(t),this.intensity=e}copy(t,e){return super.copy(t,e),this.color.copy(t.color),this.intensity=t.intensity,this}toJSON(t){let e=super.toJSON(t);return e.object.color=this.color.getHex(),e.object.intensity=this.intensity,e}},Wo=class extends Ho{constructor(t,e,i){super(t,i),this.isHemisphereLight=!0,this.type="HemisphereLight",this.position.copy(Ye.DEFAULT_UP),this.updateMatrix(),this.groundColor=new kt(e)}copy(t,e){return super.copy(t,e),this.groundColor.copy(t.groundColor),this}toJSON(t){let e=super.toJSON(t);return e.object.groundColor=this.groundColor.getHex(),e}},bh=new Qt,Jp=new N,Kp=new N,ic=class{constructor(t){this.camera=t,this.intensity=1,this.bias=0,this.biasNode=null,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new rt(512,512),this.mapType=gn,this.map=null,this.mapPass=null,this.matrix=new Qt,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new Wi,this._frameExtents=new rt(1,1),this._viewportCount=1,this._viewports=[new Se(0,0,1,1)]}getViewportCount(){return this._viewportCount}getCamera(){return this.camera}getFrustum(){return this._frustum}updateMatrices(t){let e=this.camera;Jp.setFromMatrixPosition(t.matrixWorld),e.position.copy(Jp),Kp.setFromMatrixPosition(t.target.matrixWorld),e.lookAt(Kp),e.updateMatrixWorld(),this._updateMatrix(e,this.matrix,this._frustum)}_updateMatrix(t,e,i,s){bh.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),i.setFromProjectionMatrix(bh,t.coordinateSystem,t.reversedDepth);let r=this._frameExtents,o=s?s.z/r.x:1,a=s?s.w/r.y:1,l=s?s.x/r.x:0,c=s?s.y/r.y:0;t.coordinateSystem===fr||t.reversedDepth?e.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,1,0,0,0,0,1):e.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,.5,.5,0,0,0,1),e.multiply(bh)}getViewport(t){return this._viewports[t]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(t){return this.camera=t.camera.clone(),this.intensity=t.intensity,this.bias=t.bias,this.radius=t.radius,this.autoUpdate=t.autoUpdate,this.needsUpdate=t.needsUpdate,this.normalBias=t.normalBias,this.blurSamples=t.blurSamples,this.mapSize.copy(t.mapSize),this.mapType=t.mapType,this.biasNode=t.biasNode,this}clone(){return new this.constructor().copy(this)}toJSON(){let t={};return t.intensity=this.intensity,t.bias=this.bias,t.normalBias=this.normalBias,t.radius=this.radius,t.blurSamples=this.blurSamples,t.mapSize=this.mapSize.toArray(),t.mapType=this.mapType,t.camera=this.camera.toJSON(!1).object,delete t.camera.matrix,t}},_l=new N,vl=new Be,ii=new N,Xo=class extends Ye{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new Qt,this.projectionMatrix=new Qt,this.projectionMatrixInverse=new Qt,this.coordinateSystem=Bn,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(t,e){return super.copy(t,e),this.matrixWorldInverse.copy(t.matrixWorldInverse),this.projectionMatrix.copy(t.projectionMatrix),this.projectionMatrixInverse.copy(t.projectionMatrixInverse),this.coordinateSystem=t.coordinateSystem,this}getWorldDirection(t){return super.getWorldDirection(t).negate()}updateMatrixWorld(t){super.updateMatrixWorld(t),this.matrixWorld.decompose(_l,vl,ii),ii.x===1&&ii.y===1&&ii.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(_l,vl,ii.set(1,1,1)).invert()}updateWorldMatrix(t,e,i=!1){super.updateWorldMatrix(t,e,i),this.matrixWorld.decompose(_l,vl,ii),ii.x===1&&ii.y===1&&ii.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(_l,vl,ii.set(1,1,1)).invert()}clone(){return new this.constructor().copy(this)}},Vi=new N,jp=new rt,Qp=new rt,un=class extends Xo{constructor(t=50,e=1,i=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=t,this.zoom=1,this.near=i,this.far=s,this.focus=10,this.aspect=e,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.fov=t.fov,this.zoom=t.zoom,this.near=t.near,this.far=t.far,this.focus=t.focus,this.aspect=t.aspect,this.view=t.view===null?null:Object.assign({},t.view),this.filmGauge=t.filmGauge,this.filmOffset=t.filmOffset,this}setFocalLength(t){let e=.5*this.getFilmHeight()/t;this.fov=pr*2*Math.atan(e),this.updateProjectionMatrix()}getFocalLength(){let t=Math.tan(ho*.5*this.fov);return .5*this.getFilmHeight()/t}getEffectiveFOV(){return pr*2*Math.atan(Math.tan(ho*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(t,e,i){Vi.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),e.set(Vi.x,Vi.y).multiplyScalar(-t/Vi.z),Vi.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),i.set(Vi.x,Vi.y).multiplyScalar(-t/Vi.z)}getViewSize(t,e){return this.getViewBounds(t,jp,Qp),e.subVectors(Qp,jp)}setViewOffset(t,e,i,s,r,o){this.aspect=t/e,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=i,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=this.near,e=t*Math.tan(ho*.5*this.fov)/this.zoom,i=2*e,s=this.aspect*i,r=-.5*s,o=this.view;if(this.view!==null&&this.view.enabled){let l=o.fullWidth,c=o.fullHeight;r+=o.offsetX*s/l,e-=o.offsetY*i/c,s*=o.width/l,i*=o.height/c}let a=this.filmOffset;a!==0&&(r+=t*a/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,e,e-i,t,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.fov=this.fov,e.object.zoom=this.zoom,e.object.near=this.near,e.object.far=this.far,e.object.focus=this.focus,e.object.aspect=this.aspect,this.view!==null&&(e.object.view=Object.assign({},this.view)),e.object.filmGauge=this.filmGauge,e.object.filmOffset=this.filmOffset,e}};var qo=class extends Xo{constructor(t=-1,e=1,i=1,s=-1,r=.1,o=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=t,this.right=e,this.top=i,this.bottom=s,this.near=r,this.far=o,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.left=t.left,this.right=t.right,this.top=t.top,this.bottom=t.bottom,this.near=t.near,this.far=t.far,this.zoom=t.zoom,this.view=t.view===null?null:Object.assign({},t.view),this}setViewOffset(t,e,i,s,r,o){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=i,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=(this.right-this.left)/(2*this.zoom),e=(this.top-this.bottom)/(2*this.zoom),i=(this.right+this.left)/2,s=(this.top+this.bottom)/2,r=i-t,o=i+t,a=s+e,l=s-e;if(this.view!==null&&this.view.enabled){let c=(this.right-this.left)/this.view.fullWidth/this.zoom,u=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=c*this.view.offsetX,o=r+c*this.view.width,a-=u*this.view.offsetY,l=a-u*this.view.height}this.projectionMatrix.makeOrthographic(r,o,a,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.zoom=this.zoom,e.object.left=this.left,e.object.right=this.right,e.object.top=this.top,e.object.bottom=this.bottom,e.object.near=this.near,e.object.far=this.far,this.view!==null&&(e.object.view=Object.assign({},this.view)),e}},Ph=class extends ic{constructor(){super(new qo(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}},Yo=class extends Ho{constructor(t,e){super(t,e),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(Ye.DEFAULT_UP),this.updateMatrix(),this.target=new Ye,this.shadow=new Ph}dispose(){super.dispose(),this.shadow.dispose()}copy(t){return super.copy(t),this.target=t.target.clone(),this.shadow=t.shadow.clone(),this}toJSON(t){let e=super.toJSON(t);return e.object.shadow=this.shadow.toJSON(),e.object.target=this.target.uuid,e}};var ar=-90,lr=1,Mr=class extends Ye{constructor(t,e,i){super(),this.type="CubeCamera",this.renderTarget=i,this.coordinateSystem=null,this.activeMipmapLevel=0;let s=new un(ar,lr,t,e);s.layers=this.layers,this.add(s);let r=new un(ar,lr,t,e);r.layers=this.layers,this.add(r);let o=new un(ar,lr,t,e);o.layers=this.layers,this.add(o);let a=new un(ar,lr,t,e);a.layers=this.layers,this.add(a);let l=new un(ar,lr,t,e);l.layers=this.layers,this.add(l);let c=new un(ar,lr,t,e);c.layers=this.layers,this.add(c)}updateCoordinateSystem(){let t=this.coordinateSystem,e=this.children.concat(),[i,s,r,o,a,l]=e;for(let c of e)this.remove(c);if(t===Bn)i.up.set(0,1,0),i.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),o.up.set(0,0,1),o.lookAt(0,-1,0),a.up.set(0,1,0),a.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(t===fr)i.up.set(0,-1,0),i.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),o.up.set(0,0,-1),o.lookAt(0,-1,0),a.up.set(0,-1,0),a.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+t);for(let c of e)this.add(c),c.updateMatrixWorld()}update(t,e){this.parent===null&&this.updateMatrixWorld();let{renderTarget:i,activeMipmapLevel:s}=this;this.coordinateSystem!==t.coordinateSystem&&(this.coordinateSystem=t.coordinateSystem,this.updateCoordinateSystem());let[r,o,a,l,c,u]=this.children,f=t.getRenderTarget(),d=t.getActiveCubeFace(),h=t.getActiveMipmapLevel(),m=t.xr.enabled;t.xr.enabled=!1;let y=i.texture.mipmapsAutoUpdate;i.texture.mipmapsAutoUpdate=!1;let g=!1;t.isWebGLRenderer===!0?g=t.state.buffers.depth.getReversed():g=t.reversedDepthBuffer,t.setRenderTarget(i,0,s),g&&t.autoClear===!1&&t.clearDepth(),t.render(e,r),t.setRenderTarget(i,1,s),g&&t.autoClear===!1&&t.clearDepth(),t.render(e,o),t.setRenderTarget(i,2,s),g&&t.autoClear===!1&&t.clearDepth(),t.render(e,a),t.setRenderTarget(i,3,s),g&&t.autoClear===!1&&t.clearDepth(),t.render(e,l),t.setRenderTarget(i,4,s),g&&t.autoClear===!1&&t.clearDepth(),t.render(e,c),i.texture.mipmapsAutoUpdate=y,t.setRenderTarget(i,5,s),g&&t.autoClear===!1&&t.clearDepth(),t.render(e,u),t.setRenderTarget(f,d,h),t.xr.enabled=m,i.texture.needsPMREMUpdate=!0}},sc=class extends un{constructor(t=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=t,this.perCameraFrustumCulled=!1}};var cf="\\[\\]\\.:\\/",Ov=new RegExp("["+cf+"]","g"),uf="[^"+cf+"]",Bv="[^"+cf.replace("\\.","")+"]",kv=/((?:WC+[\/:])*)/.source.replace("WC",uf),zv=/(WCOD+)?/.source.replace("WCOD",Bv),Vv=/(?:\.(WC+)(?:\[(.+)\])?)?/.source.replace("WC",uf),Gv=/\.(WC+)(?:\[(.+)\])?/.source.replace("WC",uf),Hv=new RegExp("^"+kv+zv+Vv+Gv+"$"),Wv=["material","materials","bones","map"],Ih=class{constructor(t,e,i){let s=i||_e.parseTrackName(e);this._targetGroup=t,this._bindings=t.subscribe_(e,s)}getValue(t,e){this.bind();let i=this._targetGroup.nCachedObjects_,s=this._bindings[i];s!==void 0&&s.getValue(t,e)}setValue(t,e){let i=this._bindings;for(let s=this._targetGroup.nCachedObjects_,r=i.length;s!==r;++s)i[s].setValue(t,e)}bind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,i=t.length;e!==i;++e)t[e].bind()}unbind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,i=t.length;e!==i;++e)t[e].unbind()}},_e=class n{constructor(t,e,i){this.path=e,this.parsedPath=i||n.parseTrackName(e),this.node=n.findNode(t,this.parsedPath.nodeName),this.rootNode=t,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}static create(t,e,i){return t&&t.isAnimationObjectGroup?new n.Composite(t,e,i):new n(t,e,i)}static sanitizeNodeName(t){return t.replace(/\s/g,"_").replace(Ov,"")}static parseTrackName(t){let e=Hv.exec(t);if(e===null)throw new Error("THREE.PropertyBinding: Cannot parse trackName: "+t);let i={nodeName:e[2],objectName:e[3],objectIndex:e[4],propertyName:e[5],propertyIndex:e[6]},s=i.nodeName&&i.nodeName.lastIndexOf(".");if(s!==void 0&&s!==-1){let r=i.nodeName.substring(s+1);Wv.indexOf(r)!==-1&&(i.nodeName=i.nodeName.substring(0,s),i.objectName=r)}if(i.propertyName===null||i.propertyName.length===0)throw new Error("THREE.PropertyBinding: can not parse propertyName from trackName: "+t);return i}static findNode(t,e){if(e===void 0||e===""||e==="."||e===-1||e===t.name||e===t.uuid)return t;if(t.skeleton){let i=t.skeleton.getBoneByName(e);if(i!==void 0)return i}if(t.children){let i=function(r){for(let o=0;o<r.length;o++){let a=r[o];if(a.name===e||a.uuid===e)return a;let l=i(a.children);if(l)return l}return null},s=i(t.children);if(s)return s}return null}_getValue_unavailable(){}_setValue_unavailable(){}_getValue_direct(t,e){t[e]=this.targetObject[this.propertyName]}_getValue_array(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)t[e++]=i[s]}_getValue_arrayElement(t,e){t[e]=this.resolvedProperty[this.propertyIndex]}_getValue_toArray(t,e){this.resolvedProperty.toArray(t,e)}_setValue_direct(t,e){this.targetObject[this.propertyName]=t[e]}_setValue_direct_setNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.needsUpdate=!0}_setValue_direct_setMatrixWorldNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_array(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)i[s]=t[e++]}_setValue_array_setNeedsUpdate(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)i[s]=t[e++];this.targetObject.needsUpdate=!0}_setValue_array_setMatrixWorldNeedsUpdate(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)i[s]=t[e++];this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_arrayElement(t,e){this.resolvedProperty[this.propertyIndex]=t[e]}_setValue_arrayElement_setNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.needsUpdate=!0}_setValue_arrayElement_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_fromArray(t,e){this.resolvedProperty.fromArray(t,e)}_setValue_fromArray_setNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.needsUpdate=!0}_setValue_fromArray_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.matrixWorldNeedsUpdate=!0}_getValue_unbound(t,e){this.bind(),this.getValue(t,e)}_setValue_unbound(t,e){this.bind(),this.setValue(t,e)}bind(){let t=this.node,e=this.parsedPath,i=e.objectName,s=e.propertyName,r=e.propertyIndex;if(t||(t=n.findNode(this.rootNode,e.nodeName),this.node=t),this.getValue=this._getValue_unavailable,this.setValue=this._setValue_unavailable,!t){Rt("PropertyBinding: No target node found for track: "+this.path+".");return}if(i){let c=e.objectIndex;switch(i){case"materials":if(!t.material){Nt("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.materials){Nt("PropertyBinding: Can not bind to material.materials as node.material does not have a materials array.",this);return}t=t.material.materials;break;case"bones":if(!t.skeleton){Nt("PropertyBinding: Can not bind to bones as node does not have a skeleton.",this);return}t=t.skeleton.bones;for(let u=0;u<t.length;u++)if(t[u].name===c){c=u;break}break;case"map":if("map"in t){t=t.map;break}if(!t.material){Nt("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.map){Nt("PropertyBinding: Can not bind to material.map as node.material does not have a map.",this);return}t=t.material.map;break;default:if(t[i]===void 0){Nt("PropertyBinding: Can not bind to objectName of node undefined.",this);return}t=t[i]}if(c!==void 0){if(t[c]===void 0){Nt("PropertyBinding: Trying to bind to objectIndex of objectName, but is undefined.",this,t);return}t=t[c]}}let o=t[s];if(o===void 0){let c=e.nodeName;Nt("PropertyBinding: Trying to update property for track: "+c+"."+s+" but it wasn't found.",t);return}let a=this.Versioning.None;this.targetObject=t,t.isMaterial===!0?a=this.Versioning.NeedsUpdate:t.isObject3D===!0&&(a=this.Versioning.MatrixWorldNeedsUpdate);let l=this.BindingType.Direct;if(r!==void 0){if(s==="morphTargetInfluences"){if(!t.geometry){Nt("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.",this);return}if(!t.geometry.morphAttributes){Nt("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.morphAttributes.",this);return}t.morphTargetDictionary[r]!==void 0&&(r=t.morphTargetDictionary[r])}l=this.BindingType.ArrayElement,this.resolvedProperty=o,this.propertyIndex=r}else o.fromArray!==void 0&&o.toArray!==void 0?(l=this.BindingType.HasFromToArray,this.resolvedProperty=o):Array.isArray(o)?(l=this.BindingType.EntireArray,this.resolvedProperty=o):this.propertyName=s;this.getValue=this.GetterByBindingType[l],this.setValue=this.SetterByBindingTypeAndVersioning[l][a]}unbind(){this.node=null,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}};_e.Composite=Ih;_e.prototype.BindingType={Direct:0,EntireArray:1,ArrayElement:2,HasFromToArray:3};_e.prototype.Versioning={None:0,NeedsUpdate:1,MatrixWorldNeedsUpdate:2};_e.prototype.GetterByBindingType=[_e.prototype._getValue_direct,_e.prototype._getValue_array,_e.prototype._getValue_arrayElement,_e.prototype._getValue_toArray];_e.prototype.SetterByBindingTypeAndVersioning=[[_e.prototype._setValue_direct,_e.prototype._setValue_direct_setNeedsUpdate,_e.prototype._setValue_direct_setMatrixWorldNeedsUpdate],[_e.prototype._setValue_array,_e.prototype._setValue_array_setNeedsUpdate,_e.prototype._setValue_array_setMatrixWorldNeedsUpdate],[_e.prototype._setValue_arrayElement,_e.prototype._setValue_arrayElement_setNeedsUpdate,_e.prototype._setValue_arrayElement_setMatrixWorldNeedsUpdate],[_e.prototype._setValue_fromArray,_e.prototype._setValue_fromArray_setNeedsUpdate,_e.prototype._setValue_fromArray_setMatrixWorldNeedsUpdate]];var _T=new Float32Array(1);var Sr=class{constructor(t=1,e=0,i=0){this.radius=t,this.phi=e,this.theta=i}set(t,e,i){return this.radius=t,this.phi=e,this.theta=i,this}copy(t){return this.radius=t.radius,this.phi=t.phi,this.theta=t.theta,this}makeSafe(){return this.phi=Vt(this.phi,1e-6,Math.PI-1e-6),this}setFromVector3(t){return this.setFromCartesianCoords(t.x,t.y,t.z)}setFromCartesianCoords(t,e,i){return this.radius=Math.sqrt(t*t+e*e+i*i),this.radius===0?(this.theta=0,this.phi=0):(this.theta=Math.atan2(t,i),this.phi=Math.acos(Vt(e/this.radius,-1,1))),this}clone(){return new this.constructor().copy(this)}};var Dh=class{static{this.prototype.isMatrix2=!0}constructor(t,e,i,s){this.elements=[1,0,0,1],t!==void 0&&this.set(t,e,i,s)}identity(){return this.set(1,0,0,1),this}fromArray(t,e=0){for(let i=0;i<4;i++)this.elements[i]=t[i+e];return this}set(t,e,i,s){let r=this.elements;return r[0]=t,r[2]=e,r[1]=i,r[3]=s,this}};var $o=class extends Zn{constructor(t,e=null){super(),this.object=t,this.domElement=e,this.enabled=!0,this.state=-1,this.keys={},this.mouseButtons={LEFT:null,MIDDLE:null,RIGHT:null},this.touches={ONE:null,TWO:null}}connect(t){this.domElement!==null&&this.disconnect(),this.domElement=t}disconnect(){}dispose(){}update(){}};function hf(n,t,e,i){let s=Xv(i);switch(e){case Jh:return n*t;case fc:return n*t/s.components*s.byteLength;case dc:return n*t/s.components*s.byteLength;case es:return n*t*2/s.components*s.byteLength;case pc:return n*t*2/s.components*s.byteLength;case Kh:return n*t*3/s.components*s.byteLength;case jn:return n*t*4/s.components*s.byteLength;case mc:return n*t*4/s.components*s.byteLength;case Ko:case jo:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*8;case Qo:case ta:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case _c:case yc:return Math.max(n,16)*Math.max(t,8)/4;case gc:case vc:return Math.max(n,8)*Math.max(t,8)/2;case xc:case bc:case Sc:case wc:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*8;case Mc:case ea:case Tc:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case Ac:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case Ec:return Math.floor((n+4)/5)*Math.floor((t+3)/4)*16;case Cc:return Math.floor((n+4)/5)*Math.floor((t+4)/5)*16;case Rc:return Math.floor((n+5)/6)*Math.floor((t+4)/5)*16;case Pc:return Math.floor((n+5)/6)*Math.floor((t+5)/6)*16;case Ic:return Math.floor((n+7)/8)*Math.floor((t+4)/5)*16;case Dc:return Math.floor((n+7)/8)*Math.floor((t+5)/6)*16;case Lc:return Math.floor((n+7)/8)*Math.floor((t+7)/8)*16;case Nc:return Math.floor((n+9)/10)*Math.floor((t+4)/5)*16;case Uc:return Math.floor((n+9)/10)*Math.floor((t+5)/6)*16;case Fc:return Math.floor((n+9)/10)*Math.floor((t+7)/8)*16;case Oc:return Math.floor((n+9)/10)*Math.floor((t+9)/10)*16;case Bc:return Math.floor((n+11)/12)*Math.floor((t+9)/10)*16;case kc:return Math.floor((n+11)/12)*Math.floor((t+11)/12)*16;case zc:case Vc:case Gc:return Math.ceil(n/4)*Math.ceil(t/4)*16;case Hc:case Wc:return Math.ceil(n/4)*Math.ceil(t/4)*8;case na:case Xc:return Math.ceil(n/4)*Math.ceil(t/4)*16}throw new Error(`Unable to determine texture byte length for ${e} format.`)}function Xv(n){switch(n){case gn:case qh:return{byteLength:1,components:1};case Er:case Yh:case Kn:return{byteLength:2,components:1};case uc:case hc:return{byteLength:2,components:4};case Jn:case cc:case kn:return{byteLength:4,components:1};case $h:case Zh:return{byteLength:4,components:3}}throw new Error(`THREE.TextureUtils: Unknown texture type ${n}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:"187"}}));typeof window<"u"&&(window.__THREE__?Rt("WARNING: Multiple instances of Three.js being imported."):window.__THREE__="187");function pg(){let n=null,t=!1,e=null,i=null;function s(r,o){i=n.requestAnimationFrame(s),e(r,o)}return{start:function(){t!==!0&&e!==null&&n!==null&&(i=n.requestAnimationFrame(s),t=!0)},stop:function(){n!==null&&n.cancelAnimationFrame(i),t=!1},setAnimationLoop:function(r){e=r},setContext:function(r){n=r}}}function jv(n){let t=new WeakMap;function e(a,l){let c=a.array,u=a.usage,f=c.byteLength,d=n.createBuffer();n.bindBuffer(l,d),n.bufferData(l,c,u),a.onUploadCallback();let h;if(c instanceof Float32Array)h=n.FLOAT;else if(typeof Float16Array<"u"&&c instanceof Float16Array)h=n.HALF_FLOAT;else if(c instanceof Uint16Array)a.isFloat16BufferAttribute?h=n.HALF_FLOAT:h=n.UNSIGNED_SHORT;else if(c instanceof Int16Array)h=n.SHORT;else if(c instanceof Uint32Array)h=n.UNSIGNED_INT;else if(c instanceof Int32Array)h=n.INT;else if(c instanceof Int8Array)h=n.BYTE;else if(c instanceof Uint8Array)h=n.UNSIGNED_BYTE;else if(c instanceof Uint8ClampedArray)h=n.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+c);return{buffer:d,type:h,bytesPerElement:c.BYTES_PER_ELEMENT,version:a.version,size:f}}function i(a,l,c){let u=l.array,f=l.updateRanges;if(n.bindBuffer(c,a),f.length===0)n.bufferSubData(c,0,u);else{f.sort((h,m)=>h.start-m.start);let d=0;for(let h=1;h<f.length;h++){let m=f[d],y=f[h];y.start<=m.start+m.count+1?m.count=Math.max(m.count,y.start+y.count-m.start):(++d,f[d]=y)}f.length=d+1;for(let h=0,m=f.length;h<m;h++){let y=f[h];n.bufferSubData(c,y.start*u.BYTES_PER_ELEMENT,u,y.start,y.count)}l.clearUpdateRanges()}l.onUploadCallback()}function s(a){return a.isInterleavedBufferAttribute&&(a=a.data),t.get(a)}function r(a){a.isInterleavedBufferAttribute&&(a=a.data);let l=t.get(a);l&&(n.deleteBuffer(l.buffer),t.delete(a))}function o(a,l){if(a.isInterleavedBufferAttribute&&(a=a.data),a.isGLBufferAttribute){let u=t.get(a);(!u||u.version<a.version)&&t.set(a,{buffer:a.buffer,type:a.type,bytesPerElement:a.elementSize,version:a.version});return}let c=t.get(a);if(c===void 0)t.set(a,e(a,l));else if(c.version<a.version){if(c.size!==a.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");i(c.buffer,a,l),c.version=a.version}}return{get:s,remove:r,update:o}}var Qv=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,ty=`#ifdef USE_ALPHAHASH
	const float ALPHA_HASH_SCALE = 0.05;
	float hash2D( vec2 value ) {
		return fract( 1.0e4 * sin( 17.0 * value.x + 0.1 * value.y ) * ( 0.1 + abs( sin( 13.0 * value.y + value.x ) ) ) );
	}
	float hash3D( vec3 value ) {
		return hash2D( vec2( hash2D( value.xy ), value.z ) );
	}
	float getAlphaHashThreshold( vec3 position ) {
		float maxDeriv = max(
			length( dFdx( position.xyz ) ),
			length( dFdy( position.xyz ) )
		);
		float pixScale = 1.0 / ( ALPHA_HASH_SCALE * maxDeriv );
		vec2 pixScales = vec2(
			exp2( floor( log2( pixScale ) ) ),
			exp2( ceil( log2( pixScale ) ) )
		);
		vec2 alpha = vec2(
			hash3D( floor( pixScales.x * position.xyz ) ),
			hash3D( floor( pixScales.y * position.xyz ) )
		);
		float lerpFactor = fract( log2( pixScale ) );
		float x = ( 1.0 - lerpFactor ) * alpha.x + lerpFactor * alpha.y;
		float a = min( lerpFactor, 1.0 - lerpFactor );
		vec3 cases = vec3(
			x * x / ( 2.0 * a * ( 1.0 - a ) ),
			( x - 0.5 * a ) / ( 1.0 - a ),
			1.0 - ( ( 1.0 - x ) * ( 1.0 - x ) / ( 2.0 * a * ( 1.0 - a ) ) )
		);
		float threshold = ( x < ( 1.0 - a ) )
			? ( ( x < a ) ? cases.x : cases.y )
			: cases.z;
		return clamp( threshold , 1.0e-6, 1.0 );
	}
#endif`,ey=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,ny=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,iy=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,sy=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,ry=`#ifdef USE_AOMAP
	float ambientOcclusion = ( texture2D( aoMap, vAoMapUv ).r - 1.0 ) * aoMapIntensity + 1.0;
	reflectedLight.indirectDiffuse *= ambientOcclusion;
	#if defined( USE_CLEARCOAT ) 
		clearcoatSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_SHEEN ) 
		sheenSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_ENVMAP ) && defined( STANDARD )
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		reflectedLight.indirectSpecular *= computeSpecularOcclusion( dotNV, ambientOcclusion, material.roughness );
	#endif
#endif`,oy=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,ay=`#ifdef USE_BATCHING
	#if ! defined( GL_ANGLE_multi_draw )
	#define gl_DrawID _gl_DrawID
	uniform int _gl_DrawID;
	#endif
	uniform highp sampler2D batchingTexture;
	uniform highp usampler2D batchingIdTexture;
	mat4 getBatchingMatrix( const in float i ) {
		int size = textureSize( batchingTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( batchingTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( batchingTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( batchingTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( batchingTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
	float getIndirectIndex( const in int i ) {
		int size = textureSize( batchingIdTexture, 0 ).x;
		int x = i % size;
		int y = i / size;
		return float( texelFetch( batchingIdTexture, ivec2( x, y ), 0 ).r );
	}
#endif
#ifdef USE_BATCHING_COLOR
	uniform sampler2D batchingColorTexture;
	vec4 getBatchingColor( const in float i ) {
		int size = textureSize( batchingColorTexture, 0 ).x;
		int j = int( i );
		int x = j % size;
		int y = j / size;
		return texelFetch( batchingColorTexture, ivec2( x, y ), 0 );
	}
#endif`,ly=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,cy=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,uy=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,hy=`float G_BlinnPhong_Implicit( ) {
	return 0.25;
}
float D_BlinnPhong( const in float shininess, const in float dotNH ) {
	return RECIPROCAL_PI * ( shininess * 0.5 + 1.0 ) * pow( dotNH, shininess );
}
vec3 BRDF_BlinnPhong( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 specularColor, const in float shininess ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( specularColor, 1.0, dotVH );
	float G = G_BlinnPhong_Implicit( );
	float D = D_BlinnPhong( shininess, dotNH );
	return F * ( G * D );
} // validated`,fy=`#ifdef USE_IRIDESCENCE
	const mat3 XYZ_TO_REC709 = mat3(
		 3.2404542, -0.9692660,  0.0556434,
		-1.5371385,  1.8760108, -0.2040259,
		-0.4985314,  0.0415560,  1.0572252
	);
	vec3 Fresnel0ToIor( vec3 fresnel0 ) {
		vec3 sqrtF0 = sqrt( fresnel0 );
		return ( vec3( 1.0 ) + sqrtF0 ) / ( vec3( 1.0 ) - sqrtF0 );
	}
	vec3 IorToFresnel0( vec3 transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - vec3( incidentIor ) ) / ( transmittedIor + vec3( incidentIor ) ) );
	}
	float IorToFresnel0( float transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - incidentIor ) / ( transmittedIor + incidentIor ));
	}
	vec3 evalSensitivity( float OPD, vec3 shift ) {
		float phase = 2.0 * PI * OPD * 1.0e-9;
		vec3 val = vec3( 5.4856e-13, 4.4201e-13, 5.2481e-13 );
		vec3 pos = vec3( 1.6810e+06, 1.7953e+06, 2.2084e+06 );
		vec3 var = vec3( 4.3278e+09, 9.3046e+09, 6.6121e+09 );
		vec3 xyz = val * sqrt( 2.0 * PI * var ) * cos( pos * phase + shift ) * exp( - pow2( phase ) * var );
		xyz.x += 9.7470e-14 * sqrt( 2.0 * PI * 4.5282e+09 ) * cos( 2.2399e+06 * phase + shift[ 0 ] ) * exp( - 4.5282e+09 * pow2( phase ) );
		xyz /= 1.0685e-7;
		vec3 rgb = XYZ_TO_REC709 * xyz;
		return rgb;
	}
	vec3 evalIridescence( float outsideIOR, float eta2, float cosTheta1, float thinFilmThickness, vec3 baseF0 ) {
		vec3 I;
		float iridescenceIOR = mix( outsideIOR, eta2, smoothstep( 0.0, 0.03, thinFilmThickness ) );
		float sinTheta2Sq = pow2( outsideIOR / iridescenceIOR ) * ( 1.0 - pow2( cosTheta1 ) );
		float cosTheta2Sq = 1.0 - sinTheta2Sq;
		if ( cosTheta2Sq < 0.0 ) {
			return vec3( 1.0 );
		}
		float cosTheta2 = sqrt( cosTheta2Sq );
		float R0 = IorToFresnel0( iridescenceIOR, outsideIOR );
		float R12 = F_Schlick( R0, 1.0, cosTheta1 );
		float T121 = 1.0 - R12;
		float phi12 = 0.0;
		if ( iridescenceIOR < outsideIOR ) phi12 = PI;
		float phi21 = PI - phi12;
		vec3 baseIOR = Fresnel0ToIor( clamp( baseF0, 0.0, 0.9999 ) );		vec3 R1 = IorToFresnel0( baseIOR, iridescenceIOR );
		vec3 R23 = F_Schlick( R1, 1.0, cosTheta2 );
		vec3 phi23 = vec3( 0.0 );
		if ( baseIOR[ 0 ] < iridescenceIOR ) phi23[ 0 ] = PI;
		if ( baseIOR[ 1 ] < iridescenceIOR ) phi23[ 1 ] = PI;
		if ( baseIOR[ 2 ] < iridescenceIOR ) phi23[ 2 ] = PI;
		float OPD = 2.0 * iridescenceIOR * thinFilmThickness * cosTheta2;
		vec3 phi = vec3( phi21 ) + phi23;
		vec3 R123 = clamp( R12 * R23, 1e-5, 0.9999 );
		vec3 r123 = sqrt( R123 );
		vec3 Rs = pow2( T121 ) * R23 / ( vec3( 1.0 ) - R123 );
		vec3 C0 = R12 + Rs;
		I = C0;
		vec3 Cm = Rs - T121;
		for ( int m = 1; m <= 2; ++ m ) {
			Cm *= r123;
			vec3 Sm = 2.0 * evalSensitivity( float( m ) * OPD, float( m ) * phi );
			I += Cm * Sm;
		}
		return max( I, vec3( 0.0 ) );
	}
#endif`,dy=`#ifdef USE_BUMPMAP
	uniform sampler2D bumpMap;
	uniform float bumpScale;
	vec2 dHdxy_fwd() {
		vec2 dSTdx = dFdx( vBumpMapUv );
		vec2 dSTdy = dFdy( vBumpMapUv );
		float Hll = bumpScale * texture2D( bumpMap, vBumpMapUv ).x;
		float dBx = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdx ).x - Hll;
		float dBy = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdy ).x - Hll;
		return vec2( dBx, dBy );
	}
	vec3 perturbNormalArb( vec3 surf_pos, vec3 surf_norm, vec2 dHdxy, float faceDirection ) {
		vec3 vSigmaX = normalize( dFdx( surf_pos.xyz ) );
		vec3 vSigmaY = normalize( dFdy( surf_pos.xyz ) );
		vec3 vN = surf_norm;
		vec3 R1 = cross( vSigmaY, vN );
		vec3 R2 = cross( vN, vSigmaX );
		float fDet = dot( vSigmaX, R1 ) * faceDirection;
		vec3 vGrad = sign( fDet ) * ( dHdxy.x * R1 + dHdxy.y * R2 );
		return normalize( abs( fDet ) * surf_norm - vGrad );
	}
#endif`,py=`#if NUM_CLIPPING_PLANES > 0
	vec4 plane;
	#ifdef ALPHA_TO_COVERAGE
		float distanceToPlane, distanceGradient;
		float clipOpacity = 1.0;
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
			distanceGradient = fwidth( distanceToPlane ) / 2.0;
			clipOpacity *= smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			if ( clipOpacity == 0.0 ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			float unionClipOpacity = 1.0;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
				distanceGradient = fwidth( distanceToPlane ) / 2.0;
				unionClipOpacity *= 1.0 - smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			}
			#pragma unroll_loop_end
			clipOpacity *= 1.0 - unionClipOpacity;
		#endif
		diffuseColor.a *= clipOpacity;
		if ( diffuseColor.a == 0.0 ) discard;
	#else
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			if ( dot( vClipPosition, plane.xyz ) > plane.w ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			bool clipped = true;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				clipped = ( dot( vClipPosition, plane.xyz ) > plane.w ) && clipped;
			}
			#pragma unroll_loop_end
			if ( clipped ) discard;
		#endif
	#endif
#endif`,my=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,gy=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,_y=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,vy=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#endif`,yy=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#endif`,xy=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec4 vColor;
#endif`,by=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	vColor = vec4( 1.0 );
#endif
#ifdef USE_COLOR_ALPHA
	vColor *= color;
#elif defined( USE_COLOR )
	vColor.rgb *= color;
#endif
#ifdef USE_INSTANCING_COLOR
	vColor.rgb *= instanceColor.rgb;
#endif
#ifdef USE_BATCHING_COLOR
	vColor *= getBatchingColor( getIndirectIndex( gl_DrawID ) );
#endif`,My=`#define PI 3.141592653589793
#define PI2 6.283185307179586
#define PI_HALF 1.5707963267948966
#define RECIPROCAL_PI 0.3183098861837907
#define RECIPROCAL_PI2 0.15915494309189535
#define EPSILON 1e-6
#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
#define whiteComplement( a ) ( 1.0 - saturate( a ) )
float pow2( const in float x ) { return x*x; }
vec3 pow2( const in vec3 x ) { return x*x; }
float pow3( const in float x ) { return x*x*x; }
float pow4( const in float x ) { float x2 = x*x; return x2*x2; }
float max3( const in vec3 v ) { return max( max( v.x, v.y ), v.z ); }
float average( const in vec3 v ) { return dot( v, vec3( 0.3333333 ) ); }
highp float rand( const in vec2 uv ) {
	const highp float a = 12.9898, b = 78.233, c = 43758.5453;
	highp float dt = dot( uv.xy, vec2( a,b ) ), sn = mod( dt, PI );
	return fract( sin( sn ) * c );
}
#ifdef HIGH_PRECISION
	float precisionSafeLength( vec3 v ) { return length( v ); }
#else
	float precisionSafeLength( vec3 v ) {
		float maxComponent = max3( abs( v ) );
		return length( v / maxComponent ) * maxComponent;
	}
#endif
struct IncidentLight {
	vec3 color;
	vec3 direction;
	bool visible;
};
struct ReflectedLight {
	vec3 directDiffuse;
	vec3 directSpecular;
	vec3 indirectDiffuse;
	vec3 indirectSpecular;
};
#ifdef USE_ALPHAHASH
	varying vec3 vPosition;
#endif
vec3 transformDirection( in vec3 dir, in mat4 matrix ) {
	return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );
}
#define inverseTransformDirection transformDirectionByInverseViewMatrix
vec3 transformNormalByInverseViewMatrix( in vec3 normal, in mat4 viewMatrix ) {
	return normalize( ( vec4( normal, 0.0 ) * viewMatrix ).xyz );
}
vec3 transformDirectionByInverseViewMatrix( in vec3 dir, in mat4 viewMatrix ) {
	return normalize( ( vec4( dir, 0.0 ) * viewMatrix ).xyz );
}
bool isPerspectiveMatrix( mat4 m ) {
	return m[ 2 ][ 3 ] == - 1.0;
}
vec2 equirectUv( in vec3 dir ) {
	float u = atan( dir.z, dir.x ) * RECIPROCAL_PI2 + 0.5;
	float v = asin( clamp( dir.y, - 1.0, 1.0 ) ) * RECIPROCAL_PI + 0.5;
	return vec2( u, v );
}
vec3 BRDF_Lambert( const in vec3 diffuseColor ) {
	return RECIPROCAL_PI * diffuseColor;
}
vec3 F_Schlick( const in vec3 f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
}
float F_Schlick( const in float f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
} // validated`,Sy=`vec3 transformedNormal = objectNormal;
#ifdef USE_TANGENT
	vec3 transformedTangent = objectTangent;
#endif
#ifdef USE_BATCHING
	mat3 bm = mat3( batchingMatrix );
	transformedNormal /= vec3( dot( bm[ 0 ], bm[ 0 ] ), dot( bm[ 1 ], bm[ 1 ] ), dot( bm[ 2 ], bm[ 2 ] ) );
	transformedNormal = bm * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = bm * transformedTangent;
	#endif
#endif
#ifdef USE_INSTANCING
	mat3 im = mat3( instanceMatrix );
	transformedNormal /= vec3( dot( im[ 0 ], im[ 0 ] ), dot( im[ 1 ], im[ 1 ] ), dot( im[ 2 ], im[ 2 ] ) );
	transformedNormal = im * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = im * transformedTangent;
	#endif
#endif
transformedNormal = normalMatrix * transformedNormal;
#ifdef FLIP_SIDED
	transformedNormal = - transformedNormal;
#endif
#ifdef USE_TANGENT
	transformedTangent = ( modelViewMatrix * vec4( transformedTangent, 0.0 ) ).xyz;
#endif`,wy=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,Ty=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,Ay=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,Ey=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,Cy="gl_FragColor = linearToOutputTexel( gl_FragColor );",Ry=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,Py=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vec3 cameraToFrag;
		if ( isOrthographic ) {
			cameraToFrag = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToFrag = normalize( vWorldPosition - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vec3 reflectVec = reflect( cameraToFrag, worldNormal );
		#else
			vec3 reflectVec = refract( cameraToFrag, worldNormal, refractionRatio );
		#endif
	#else
		vec3 reflectVec = vReflect;
	#endif
	#ifdef ENVMAP_TYPE_CUBE
		vec4 envColor = textureCube( envMap, envMapRotation * reflectVec );
		#ifdef ENVMAP_BLENDING_MULTIPLY
			outgoingLight = mix( outgoingLight, outgoingLight * envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_MIX )
			outgoingLight = mix( outgoingLight, envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_ADD )
			outgoingLight += envColor.xyz * specularStrength * reflectivity;
		#endif
	#endif
#endif`,Iy=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform mat3 envMapRotation;
	uniform samplerCube envMap;
	#ifdef ENVMAP_TYPE_PMREM
		float roughnessToMip( const in float roughness ) {
			float r = clamp( roughness, 0.0, 1.0 );
			return ENVMAP_MAX_LOD * r * ( 2.0 - r );
		}
	#endif
#endif`,Dy=`#ifdef USE_ENVMAP
	uniform float reflectivity;
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		varying vec3 vWorldPosition;
		uniform float refractionRatio;
	#else
		varying vec3 vReflect;
	#endif
#endif`,Ly=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,Ny=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vWorldPosition = worldPosition.xyz;
	#else
		vec3 cameraToVertex;
		if ( isOrthographic ) {
			cameraToVertex = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToVertex = normalize( worldPosition.xyz - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vReflect = reflect( cameraToVertex, worldNormal );
		#else
			vReflect = refract( cameraToVertex, worldNormal, refractionRatio );
		#endif
	#endif
#endif`,Uy=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,Fy=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,Oy=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,By=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,ky=`#ifdef USE_GRADIENTMAP
	uniform sampler2D gradientMap;
#endif
vec3 getGradientIrradiance( vec3 normal, vec3 lightDirection ) {
	float dotNL = dot( normal, lightDirection );
	vec2 coord = vec2( dotNL * 0.5 + 0.5, 0.0 );
	#ifdef USE_GRADIENTMAP
		return vec3( texture2D( gradientMap, coord ).r );
	#else
		vec2 fw = fwidth( coord ) * 0.5;
		return mix( vec3( 0.7 ), vec3( 1.0 ), smoothstep( 0.7 - fw.x, 0.7 + fw.x, coord.x ) );
	#endif
}`,zy=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,Vy=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,Gy=`varying vec3 vViewPosition;
struct LambertMaterial {
	vec3 diffuseColor;
	float specularStrength;
};
void RE_Direct_Lambert( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Lambert( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Lambert
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,Hy=`uniform bool receiveShadow;
uniform vec3 ambientLightColor;
#if defined( USE_LIGHT_PROBES )
	uniform vec3 lightProbe[ 9 ];
#endif
vec3 shGetIrradianceAt( in vec3 normal, in vec3 shCoefficients[ 9 ] ) {
	float x = normal.x, y = normal.y, z = normal.z;
	vec3 result = shCoefficients[ 0 ] * 0.886227;
	result += shCoefficients[ 1 ] * 2.0 * 0.511664 * y;
	result += shCoefficients[ 2 ] * 2.0 * 0.511664 * z;
	result += shCoefficients[ 3 ] * 2.0 * 0.511664 * x;
	result += shCoefficients[ 4 ] * 2.0 * 0.429043 * x * y;
	result += shCoefficients[ 5 ] * 2.0 * 0.429043 * y * z;
	result += shCoefficients[ 6 ] * ( 0.743125 * z * z - 0.247708 );
	result += shCoefficients[ 7 ] * 2.0 * 0.429043 * x * z;
	result += shCoefficients[ 8 ] * 0.429043 * ( x * x - y * y );
	return result;
}
vec3 getLightProbeIrradiance( const in vec3 lightProbe[ 9 ], const in vec3 normal ) {
	vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec3 irradiance = shGetIrradianceAt( worldNormal, lightProbe );
	return irradiance;
}
vec3 getAmbientLightIrradiance( const in vec3 ambientLightColor ) {
	vec3 irradiance = ambientLightColor;
	return irradiance;
}
float getDistanceAttenuation( const in float lightDistance, const in float cutoffDistance, const in float decayExponent ) {
	float distanceFalloff = 1.0 / max( pow( lightDistance, decayExponent ), 0.01 );
	if ( cutoffDistance > 0.0 ) {
		distanceFalloff *= pow2( saturate( 1.0 - pow4( lightDistance / cutoffDistance ) ) );
	}
	return distanceFalloff;
}
float getSpotAttenuation( const in float coneCosine, const in float penumbraCosine, const in float angleCosine ) {
	return smoothstep( coneCosine, penumbraCosine, angleCosine );
}
#if NUM_SUN_LIGHTS > 0
	struct SunLight {
		vec3 direction;
		vec3 color;
	};
	uniform SunLight sunLights[ NUM_SUN_LIGHTS ];
	void getSunLightInfo( const in SunLight sunLight, out IncidentLight light ) {
		light.color = sunLight.color;
		light.direction = sunLight.direction;
		light.visible = true;
	}
#endif
#if NUM_DIR_LIGHTS > 0
	struct DirectionalLight {
		vec3 direction;
		vec3 color;
	};
	uniform DirectionalLight directionalLights[ NUM_DIR_LIGHTS ];
	void getDirectionalLightInfo( const in DirectionalLight directionalLight, out IncidentLight light ) {
		light.color = directionalLight.color;
		light.direction = directionalLight.direction;
		light.visible = true;
	}
#endif
#if NUM_POINT_LIGHTS > 0
	struct PointLight {
		vec3 position;
		vec3 color;
		float distance;
		float decay;
	};
	uniform PointLight pointLights[ NUM_POINT_LIGHTS ];
	void getPointLightInfo( const in PointLight pointLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = pointLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float lightDistance = length( lVector );
		light.color = pointLight.color;
		light.color *= getDistanceAttenuation( lightDistance, pointLight.distance, pointLight.decay );
		light.visible = ( light.color != vec3( 0.0 ) );
	}
#endif
#if NUM_SPOT_LIGHTS > 0
	struct SpotLight {
		vec3 position;
		vec3 direction;
		vec3 color;
		float distance;
		float decay;
		float coneCos;
		float penumbraCos;
	};
	uniform SpotLight spotLights[ NUM_SPOT_LIGHTS ];
	void getSpotLightInfo( const in SpotLight spotLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = spotLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float angleCos = dot( light.direction, spotLight.direction );
		float spotAttenuation = getSpotAttenuation( spotLight.coneCos, spotLight.penumbraCos, angleCos );
		if ( spotAttenuation > 0.0 ) {
			float lightDistance = length( lVector );
			light.color = spotLight.color * spotAttenuation;
			light.color *= getDistanceAttenuation( lightDistance, spotLight.distance, spotLight.decay );
			light.visible = ( light.color != vec3( 0.0 ) );
		} else {
			light.color = vec3( 0.0 );
			light.visible = false;
		}
	}
#endif
#if NUM_RECT_AREA_LIGHTS > 0
	struct RectAreaLight {
		vec3 color;
		vec3 position;
		vec3 halfWidth;
		vec3 halfHeight;
	};
	uniform sampler2D ltc_1;	uniform sampler2D ltc_2;
	uniform RectAreaLight rectAreaLights[ NUM_RECT_AREA_LIGHTS ];
#endif
#if NUM_HEMI_LIGHTS > 0
	struct HemisphereLight {
		vec3 direction;
		vec3 skyColor;
		vec3 groundColor;
	};
	uniform HemisphereLight hemisphereLights[ NUM_HEMI_LIGHTS ];
	vec3 getHemisphereLightIrradiance( const in HemisphereLight hemiLight, const in vec3 normal ) {
		float dotNL = dot( normal, hemiLight.direction );
		float hemiDiffuseWeight = 0.5 * dotNL + 0.5;
		vec3 irradiance = mix( hemiLight.groundColor, hemiLight.skyColor, hemiDiffuseWeight );
		return irradiance;
	}
#endif
#include <lightprobes_pars_fragment>`,Wy=`#ifdef USE_ENVMAP
	vec3 getIBLIrradiance( const in vec3 normal ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * worldNormal, ENVMAP_MAX_LOD );
			return PI * envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	vec3 getIBLRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 reflectVec = reflect( - viewDir, normal );
			reflectVec = normalize( mix( reflectVec, normal, pow4( roughness ) ) );
			reflectVec = transformDirectionByInverseViewMatrix( reflectVec, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * reflectVec, roughnessToMip( roughness ) );
			return envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	#ifdef USE_RETROREFLECTION
		vec3 getIBLRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 retroVec = normalize( mix( viewDir, normal, pow4( roughness ) ) );
				retroVec = transformDirectionByInverseViewMatrix( retroVec, viewMatrix );
				vec4 envMapColor = textureLod( envMap, envMapRotation * retroVec, roughnessToMip( roughness ) );
				return envMapColor.rgb * envMapIntensity;
			#else
				return vec3( 0.0 );
			#endif
		}
	#endif
	#ifdef USE_ANISOTROPY
		vec3 getIBLAnisotropyRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 bentNormal = cross( bitangent, viewDir );
				bentNormal = normalize( cross( bentNormal, bitangent ) );
				bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
				return getIBLRadiance( viewDir, bentNormal, roughness );
			#else
				return vec3( 0.0 );
			#endif
		}
		#ifdef USE_RETROREFLECTION
			vec3 getIBLAnisotropyRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
				#ifdef ENVMAP_TYPE_PMREM
					vec3 bentNormal = cross( bitangent, viewDir );
					bentNormal = normalize( cross( bentNormal, bitangent ) );
					bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
					return getIBLRetroRadiance( viewDir, bentNormal, roughness );
				#else
					return vec3( 0.0 );
				#endif
			}
		#endif
	#endif
#endif`,Xy=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,qy=`varying vec3 vViewPosition;
struct ToonMaterial {
	vec3 diffuseColor;
};
void RE_Direct_Toon( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 irradiance = getGradientIrradiance( geometryNormal, directLight.direction ) * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Toon( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Toon
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,Yy=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,$y=`varying vec3 vViewPosition;
struct BlinnPhongMaterial {
	vec3 diffuseColor;
	vec3 specularColor;
	float specularShininess;
	float specularStrength;
};
void RE_Direct_BlinnPhong( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
	reflectedLight.directSpecular += irradiance * BRDF_BlinnPhong( directLight.direction, geometryViewDir, geometryNormal, material.specularColor, material.specularShininess ) * material.specularStrength;
}
void RE_IndirectDiffuse_BlinnPhong( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_BlinnPhong
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,Zy=`PhysicalMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.diffuseContribution = diffuseColor.rgb * ( 1.0 - metalnessFactor );
material.metalness = metalnessFactor;
vec3 dxy = max( abs( dFdx( nonPerturbedNormal ) ), abs( dFdy( nonPerturbedNormal ) ) );
float geometryRoughness = max( max( dxy.x, dxy.y ), dxy.z );
material.roughness = max( roughnessFactor, 0.045 );
material.roughness += geometryRoughness;
material.roughness = min( material.roughness, 1.0 );
#ifdef USE_DIFFUSE_ROUGHNESS
	float diffuseRoughnessFactor = diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		diffuseRoughnessFactor *= texture2D( diffuseRoughnessMap, vDiffuseRoughnessMapUv ).r;
	#endif
	material.diffuseRoughness = saturate( diffuseRoughnessFactor );
#endif
#ifdef IOR
	material.ior = ior;
	#ifdef USE_SPECULAR
		float specularIntensityFactor = specularIntensity;
		vec3 specularColorFactor = specularColor;
		#ifdef USE_SPECULAR_COLORMAP
			specularColorFactor *= texture2D( specularColorMap, vSpecularColorMapUv ).rgb;
		#endif
		#ifdef USE_SPECULAR_INTENSITYMAP
			specularIntensityFactor *= texture2D( specularIntensityMap, vSpecularIntensityMapUv ).a;
		#endif
		material.specularF90 = mix( specularIntensityFactor, 1.0, metalnessFactor );
	#else
		float specularIntensityFactor = 1.0;
		vec3 specularColorFactor = vec3( 1.0 );
		material.specularF90 = 1.0;
	#endif
	material.specularColor = min( pow2( ( material.ior - 1.0 ) / ( material.ior + 1.0 ) ) * specularColorFactor, vec3( 1.0 ) ) * specularIntensityFactor;
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
#else
	material.specularColor = vec3( 0.04 );
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
	material.specularF90 = 1.0;
#endif
#ifdef USE_CLEARCOAT
	material.clearcoat = clearcoat;
	material.clearcoatRoughness = clearcoatRoughness;
	material.clearcoatF0 = vec3( 0.04 );
	material.clearcoatF90 = 1.0;
	#ifdef USE_CLEARCOATMAP
		material.clearcoat *= texture2D( clearcoatMap, vClearcoatMapUv ).x;
	#endif
	#ifdef USE_CLEARCOAT_ROUGHNESSMAP
		material.clearcoatRoughness *= texture2D( clearcoatRoughnessMap, vClearcoatRoughnessMapUv ).y;
	#endif
	material.clearcoat = saturate( material.clearcoat );	material.clearcoatRoughness = max( material.clearcoatRoughness, 0.045 );
	material.clearcoatRoughness += geometryRoughness;
	material.clearcoatRoughness = min( material.clearcoatRoughness, 1.0 );
#endif
#ifdef USE_DISPERSION
	material.dispersion = dispersion;
#endif
#ifdef USE_RETROREFLECTION
	material.retroreflectivity = retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	material.iridescence = iridescence;
	material.iridescenceIOR = iridescenceIOR;
	#ifdef USE_IRIDESCENCEMAP
		material.iridescence *= texture2D( iridescenceMap, vIridescenceMapUv ).r;
	#endif
	#ifdef USE_IRIDESCENCE_THICKNESSMAP
		material.iridescenceThickness = (iridescenceThicknessMaximum - iridescenceThicknessMinimum) * texture2D( iridescenceThicknessMap, vIridescenceThicknessMapUv ).g + iridescenceThicknessMinimum;
	#else
		material.iridescenceThickness = iridescenceThicknessMaximum;
	#endif
#endif
#ifdef USE_SHEEN
	material.sheenColor = sheenColor;
	#ifdef USE_SHEEN_COLORMAP
		material.sheenColor *= texture2D( sheenColorMap, vSheenColorMapUv ).rgb;
	#endif
	material.sheenRoughness = clamp( sheenRoughness, 0.0001, 1.0 );
	#ifdef USE_SHEEN_ROUGHNESSMAP
		material.sheenRoughness *= texture2D( sheenRoughnessMap, vSheenRoughnessMapUv ).a;
	#endif
#endif
#ifdef USE_ANISOTROPY
	#ifdef USE_ANISOTROPYMAP
		mat2 anisotropyMat = mat2( anisotropyVector.x, anisotropyVector.y, - anisotropyVector.y, anisotropyVector.x );
		vec3 anisotropyPolar = texture2D( anisotropyMap, vAnisotropyMapUv ).rgb;
		vec2 anisotropyV = anisotropyMat * normalize( 2.0 * anisotropyPolar.rg - vec2( 1.0 ) ) * anisotropyPolar.b;
	#else
		vec2 anisotropyV = anisotropyVector;
	#endif
	material.anisotropy = length( anisotropyV );
	if( material.anisotropy == 0.0 ) {
		anisotropyV = vec2( 1.0, 0.0 );
	} else {
		anisotropyV /= material.anisotropy;
		material.anisotropy = saturate( material.anisotropy );
	}
	material.alphaT = mix( pow2( material.roughness ), 1.0, pow2( material.anisotropy ) );
	material.anisotropyT = tbn[ 0 ] * anisotropyV.x + tbn[ 1 ] * anisotropyV.y;
	material.anisotropyB = tbn[ 1 ] * anisotropyV.x - tbn[ 0 ] * anisotropyV.y;
#endif`,Jy=`uniform sampler2D dfgLUT;
struct PhysicalMaterial {
	vec3 diffuseColor;
	vec3 diffuseContribution;
	vec3 specularColor;
	vec3 specularColorBlended;
	float roughness;
	float metalness;
	float specularF90;
	float dispersion;
	vec2 dfg;
	vec3 multiScatteringCompensation;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float diffuseRoughness;
	#endif
	#ifdef USE_RETROREFLECTION
		float retroreflectivity;
	#endif
	#ifdef USE_CLEARCOAT
		float clearcoat;
		float clearcoatRoughness;
		vec3 clearcoatF0;
		float clearcoatF90;
	#endif
	#ifdef USE_IRIDESCENCE
		float iridescence;
		float iridescenceIOR;
		float iridescenceThickness;
		vec3 iridescenceFresnel;
		vec3 iridescenceF0Dielectric;
		vec3 iridescenceF0Metallic;
	#endif
	#ifdef USE_SHEEN
		vec3 sheenColor;
		float sheenRoughness;
	#endif
	#ifdef IOR
		float ior;
	#endif
	#ifdef USE_TRANSMISSION
		float transmission;
		float transmissionAlpha;
		float thickness;
		float attenuationDistance;
		vec3 attenuationColor;
	#endif
	#ifdef USE_ANISOTROPY
		float anisotropy;
		float alphaT;
		vec3 anisotropyT;
		vec3 anisotropyB;
	#endif
};
vec3 clearcoatSpecularDirect = vec3( 0.0 );
vec3 clearcoatSpecularIndirect = vec3( 0.0 );
vec3 sheenSpecularDirect = vec3( 0.0 );
vec3 sheenSpecularIndirect = vec3(0.0 );
vec3 Schlick_to_F0( const in vec3 f, const in float f90, const in float dotVH ) {
    float x = clamp( 1.0 - dotVH, 0.0, 1.0 );
    float x2 = x * x;
    float x5 = clamp( x * x2 * x2, 0.0, 0.9999 );
    return ( f - vec3( f90 ) * x5 ) / ( 1.0 - x5 );
}
#ifdef USE_DIFFUSE_ROUGHNESS
	const float EON_EPSILON = 1e-7;
	float FON_DirectionalAlbedo( const in float mu, const in float roughness, const in float A ) {
		float muComp = 1.0 - mu;
		float gOverPi = muComp * ( 0.0571085289 + muComp * ( 0.491881867 + muComp * ( - 0.332181442 + muComp * 0.0714429953 ) ) );
		return A * ( 1.0 + roughness * gOverPi );
	}
	vec3 BRDF_EON( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 diffuseColor, const in float roughness ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return BRDF_Lambert( rho );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float s = dot( lightDir, viewDir ) - dotNL * dotNV;
		float sOverT = ( s > 0.0 ) ? s / max( max( dotNL, dotNV ), EON_EPSILON ) : s;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		vec3 singleScatter = rho * RECIPROCAL_PI * A * ( 1.0 + roughness * sOverT );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		float albedoV = FON_DirectionalAlbedo( dotNV, roughness, A );
		float albedoL = FON_DirectionalAlbedo( dotNL, roughness, A );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		vec3 multiScatter = rhoMultiScatter * RECIPROCAL_PI
			* max( EON_EPSILON, 1.0 - albedoV )
			* max( EON_EPSILON, 1.0 - albedoL )
			/ max( EON_EPSILON, 1.0 - averageAlbedo );
		return singleScatter + multiScatter;
	}
	vec3 EON_DirectionalAlbedo( const in vec3 diffuseColor, const in float roughness, const in float dotNV ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return rho;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		float directionalAlbedo = FON_DirectionalAlbedo( dotNV, roughness, A );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		return rho * directionalAlbedo + rhoMultiScatter * ( 1.0 - directionalAlbedo );
	}
#endif
float V_GGX_SmithCorrelated( const in float alpha, const in float dotNL, const in float dotNV ) {
	float a2 = pow2( alpha );
	float gv = dotNL * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNV ) );
	float gl = dotNV * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNL ) );
	return 0.5 / max( gv + gl, EPSILON );
}
float D_GGX( const in float alpha, const in float dotNH ) {
	float a2 = pow2( alpha );
	float denom = pow2( dotNH ) * ( a2 - 1.0 ) + 1.0;
	return RECIPROCAL_PI * a2 / pow2( denom );
}
#ifdef USE_ANISOTROPY
	float V_GGX_SmithCorrelated_Anisotropic( const in float alphaT, const in float alphaB, const in float dotTV, const in float dotBV, const in float dotTL, const in float dotBL, const in float dotNV, const in float dotNL ) {
		float gv = dotNL * length( vec3( alphaT * dotTV, alphaB * dotBV, dotNV ) );
		float gl = dotNV * length( vec3( alphaT * dotTL, alphaB * dotBL, dotNL ) );
		return 0.5 / max( gv + gl, EPSILON );
	}
	float D_GGX_Anisotropic( const in float alphaT, const in float alphaB, const in float dotNH, const in float dotTH, const in float dotBH ) {
		float a2 = alphaT * alphaB;
		highp vec3 v = vec3( alphaB * dotTH, alphaT * dotBH, a2 * dotNH );
		highp float v2 = dot( v, v );
		float w2 = a2 / v2;
		return RECIPROCAL_PI * a2 * pow2 ( w2 );
	}
#endif
#ifdef USE_CLEARCOAT
	vec3 BRDF_GGX_Clearcoat( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material) {
		vec3 f0 = material.clearcoatF0;
		float f90 = material.clearcoatF90;
		float roughness = max( material.clearcoatRoughness, 0.045 );
		float alpha = pow2( roughness );
		vec3 halfDir = normalize( lightDir + viewDir );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float dotNH = saturate( dot( normal, halfDir ) );
		float dotVH = saturate( dot( viewDir, halfDir ) );
		vec3 F = F_Schlick( f0, f90, dotVH );
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
		return F * ( V * D );
	}
#endif
vec3 BRDF_GGX( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material ) {
	vec3 f0 = material.specularColorBlended;
	float f90 = material.specularF90;
	float roughness = max( material.roughness, 0.045 );
	float alpha = pow2( roughness );
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( f0, f90, dotVH );
	#ifdef USE_IRIDESCENCE
		F = mix( F, material.iridescenceFresnel, material.iridescence );
	#endif
	#ifdef USE_ANISOTROPY
		float dotTL = dot( material.anisotropyT, lightDir );
		float dotTV = dot( material.anisotropyT, viewDir );
		float dotTH = dot( material.anisotropyT, halfDir );
		float dotBL = dot( material.anisotropyB, lightDir );
		float dotBV = dot( material.anisotropyB, viewDir );
		float dotBH = dot( material.anisotropyB, halfDir );
		float alphaT = max( material.alphaT, alpha );
		float V = V_GGX_SmithCorrelated_Anisotropic( alphaT, alpha, dotTV, dotBV, dotTL, dotBL, dotNV, dotNL );
		float D = D_GGX_Anisotropic( alphaT, alpha, dotNH, dotTH, dotBH );
	#else
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
	#endif
	return F * ( V * D );
}
vec2 LTC_Uv( const in vec3 N, const in vec3 V, const in float roughness ) {
	const float LUT_SIZE = 64.0;
	const float LUT_SCALE = ( LUT_SIZE - 1.0 ) / LUT_SIZE;
	const float LUT_BIAS = 0.5 / LUT_SIZE;
	float dotNV = saturate( dot( N, V ) );
	vec2 uv = vec2( roughness, sqrt( 1.0 - dotNV ) );
	uv = uv * LUT_SCALE + LUT_BIAS;
	return uv;
}
float LTC_ClippedSphereFormFactor( const in vec3 f ) {
	float l = length( f );
	return max( ( l * l + f.z ) / ( l + 1.0 ), 0.0 );
}
vec3 LTC_EdgeVectorFormFactor( const in vec3 v1, const in vec3 v2 ) {
	float x = dot( v1, v2 );
	float y = abs( x );
	float a = 0.8543985 + ( 0.4965155 + 0.0145206 * y ) * y;
	float b = 3.4175940 + ( 4.1616724 + y ) * y;
	float v = a / b;
	float theta_sintheta = ( x > 0.0 ) ? v : 0.5 * inversesqrt( max( 1.0 - x * x, 1e-7 ) ) - v;
	return cross( v1, v2 ) * theta_sintheta;
}
vec3 LTC_Evaluate( const in vec3 N, const in vec3 V, const in vec3 P, const in mat3 mInv, const in vec3 rectCoords[ 4 ] ) {
	vec3 v1 = rectCoords[ 1 ] - rectCoords[ 0 ];
	vec3 v2 = rectCoords[ 3 ] - rectCoords[ 0 ];
	vec3 lightNormal = cross( v1, v2 );
	if( dot( lightNormal, P - rectCoords[ 0 ] ) < 0.0 ) return vec3( 0.0 );
	vec3 T1, T2;
	T1 = normalize( V - N * dot( V, N ) );
	T2 = - cross( N, T1 );
	mat3 mat = mInv * transpose( mat3( T1, T2, N ) );
	vec3 coords[ 4 ];
	coords[ 0 ] = mat * ( rectCoords[ 0 ] - P );
	coords[ 1 ] = mat * ( rectCoords[ 1 ] - P );
	coords[ 2 ] = mat * ( rectCoords[ 2 ] - P );
	coords[ 3 ] = mat * ( rectCoords[ 3 ] - P );
	coords[ 0 ] = normalize( coords[ 0 ] );
	coords[ 1 ] = normalize( coords[ 1 ] );
	coords[ 2 ] = normalize( coords[ 2 ] );
	coords[ 3 ] = normalize( coords[ 3 ] );
	vec3 vectorFormFactor = vec3( 0.0 );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 0 ], coords[ 1 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 1 ], coords[ 2 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 2 ], coords[ 3 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 3 ], coords[ 0 ] );
	float result = LTC_ClippedSphereFormFactor( vectorFormFactor );
	return vec3( result );
}
#if defined( USE_SHEEN )
float D_Charlie( float roughness, float dotNH ) {
	float alpha = pow2( roughness );
	float invAlpha = 1.0 / alpha;
	float cos2h = dotNH * dotNH;
	float sin2h = max( 1.0 - cos2h, 0.0078125 );
	return ( 2.0 + invAlpha ) * pow( sin2h, invAlpha * 0.5 ) / ( 2.0 * PI );
}
float V_Neubelt( float dotNV, float dotNL ) {
	return saturate( 1.0 / ( 4.0 * ( dotNL + dotNV - dotNL * dotNV ) ) );
}
vec3 BRDF_Sheen( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, vec3 sheenColor, const in float sheenRoughness ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float D = D_Charlie( sheenRoughness, dotNH );
	float V = V_Neubelt( dotNV, dotNL );
	return sheenColor * ( D * V );
}
#endif
float IBLSheenBRDF( const in vec3 normal, const in vec3 viewDir, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	float r2 = roughness * roughness;
	float rInv = 1.0 / ( roughness + 0.1 );
	float a = -1.9362 + 1.0678 * roughness + 0.4573 * r2 - 0.8469 * rInv;
	float b = -0.6014 + 0.5538 * roughness - 0.4670 * r2 - 0.1255 * rInv;
	float DG = exp( a * dotNV + b );
	return saturate( DG );
}
vec3 EnvironmentBRDF( const in vec3 normal, const in vec3 viewDir, const in vec3 specularColor, const in float specularF90, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	vec2 fab = texture2D( dfgLUT, vec2( roughness, dotNV ) ).rg;
	return specularColor * fab.x + specularF90 * fab.y;
}
#ifdef USE_IRIDESCENCE
void computeMultiscatteringIridescence( const in vec2 fab, const in vec3 specularColor, const in float specularF90, const in float iridescence, const in vec3 iridescenceF0, inout vec3 singleScatter, inout vec3 multiScatter ) {
#else
void computeMultiscattering( const in vec2 fab, const in vec3 specularColor, const in float specularF90, inout vec3 singleScatter, inout vec3 multiScatter ) {
#endif
	#ifdef USE_IRIDESCENCE
		vec3 Fr = mix( specularColor, iridescenceF0, iridescence );
	#else
		vec3 Fr = specularColor;
	#endif
	vec3 FssEss = Fr * fab.x + specularF90 * fab.y;
	float Ess = fab.x + fab.y;
	float Ems = 1.0 - Ess;
	vec3 Favg = Fr + ( 1.0 - Fr ) * 0.047619;	vec3 Fms = FssEss * Favg / ( 1.0 - Ems * Favg );
	singleScatter += FssEss;
	multiScatter += Fms * Ems;
}
#if NUM_RECT_AREA_LIGHTS > 0
	void RE_Direct_RectArea_Physical( const in RectAreaLight rectAreaLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
		vec3 normal = geometryNormal;
		vec3 viewDir = geometryViewDir;
		vec3 position = geometryPosition;
		vec3 lightPos = rectAreaLight.position;
		vec3 halfWidth = rectAreaLight.halfWidth;
		vec3 halfHeight = rectAreaLight.halfHeight;
		vec3 lightColor = rectAreaLight.color;
		float roughness = material.roughness;
		vec3 rectCoords[ 4 ];
		rectCoords[ 0 ] = lightPos + halfWidth - halfHeight;		rectCoords[ 1 ] = lightPos - halfWidth - halfHeight;
		rectCoords[ 2 ] = lightPos - halfWidth + halfHeight;
		rectCoords[ 3 ] = lightPos + halfWidth + halfHeight;
		vec2 uv = LTC_Uv( normal, viewDir, roughness );
		vec4 t1 = texture2D( ltc_1, uv );
		vec4 t2 = texture2D( ltc_2, uv );
		mat3 mInv = mat3(
			vec3( t1.x, 0, t1.y ),
			vec3(    0, 1,    0 ),
			vec3( t1.z, 0, t1.w )
		);
		vec3 fresnel = ( material.specularColorBlended * t2.x + ( material.specularF90 - material.specularColorBlended ) * t2.y );
		reflectedLight.directSpecular += lightColor * fresnel * LTC_Evaluate( normal, viewDir, position, mInv, rectCoords );
		reflectedLight.directDiffuse += lightColor * material.diffuseContribution * LTC_Evaluate( normal, viewDir, position, mat3( 1.0 ), rectCoords );
		#ifdef USE_CLEARCOAT
			vec3 Ncc = geometryClearcoatNormal;
			vec2 uvClearcoat = LTC_Uv( Ncc, viewDir, material.clearcoatRoughness );
			vec4 t1Clearcoat = texture2D( ltc_1, uvClearcoat );
			vec4 t2Clearcoat = texture2D( ltc_2, uvClearcoat );
			mat3 mInvClearcoat = mat3(
				vec3( t1Clearcoat.x, 0, t1Clearcoat.y ),
				vec3(             0, 1,             0 ),
				vec3( t1Clearcoat.z, 0, t1Clearcoat.w )
			);
			vec3 fresnelClearcoat = material.clearcoatF0 * t2Clearcoat.x + ( material.clearcoatF90 - material.clearcoatF0 ) * t2Clearcoat.y;
			clearcoatSpecularDirect += lightColor * fresnelClearcoat * LTC_Evaluate( Ncc, viewDir, position, mInvClearcoat, rectCoords );
		#endif
	}
#endif
void RE_Direct_Physical( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	#ifdef USE_CLEARCOAT
		float dotNLcc = saturate( dot( geometryClearcoatNormal, directLight.direction ) );
		vec3 ccIrradiance = dotNLcc * directLight.color;
		clearcoatSpecularDirect += ccIrradiance * BRDF_GGX_Clearcoat( directLight.direction, geometryViewDir, geometryClearcoatNormal, material );
	#endif
	#ifdef USE_SHEEN
 
 		sheenSpecularDirect += irradiance * BRDF_Sheen( directLight.direction, geometryViewDir, geometryNormal, material.sheenColor, material.sheenRoughness );
 
 		float sheenAlbedoV = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
 		float sheenAlbedoL = IBLSheenBRDF( geometryNormal, directLight.direction, material.sheenRoughness );
 
 		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * max( sheenAlbedoV, sheenAlbedoL );
 
 		irradiance *= sheenEnergyComp;
 
 	#endif
	vec3 specularBRDF = BRDF_GGX( directLight.direction, geometryViewDir, geometryNormal, material );
	#ifdef USE_RETROREFLECTION
		vec3 retroViewDir = reflect( - geometryViewDir, geometryNormal );
		vec3 retroSpecularBRDF = BRDF_GGX( directLight.direction, retroViewDir, geometryNormal, material );
		specularBRDF = mix( specularBRDF, retroSpecularBRDF, saturate( material.retroreflectivity ) );
	#endif
	reflectedLight.directSpecular += irradiance * specularBRDF * material.multiScatteringCompensation;
	vec3 halfDir = normalize( directLight.direction + geometryViewDir );
	float dotVH = saturate( dot( geometryViewDir, halfDir ) );
	vec3 F = F_Schlick( material.specularColor, material.specularF90, dotVH );
	#ifdef USE_RETROREFLECTION
		vec3 retroHalfDir = normalize( directLight.direction + retroViewDir );
		float dotRetroVH = saturate( dot( retroViewDir, retroHalfDir ) );
		vec3 retroF = F_Schlick( material.specularColor, material.specularF90, dotRetroVH );
		F = mix( F, retroF, saturate( material.retroreflectivity ) );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		vec3 diffuseBRDF = BRDF_EON( directLight.direction, geometryViewDir, geometryNormal, material.diffuseColor, material.diffuseRoughness ) * ( 1.0 - material.metalness );
	#else
		vec3 diffuseBRDF = BRDF_Lambert( material.diffuseContribution );
	#endif
	reflectedLight.directDiffuse += irradiance * diffuseBRDF * ( 1.0 - F );
}
void RE_IndirectDiffuse_Physical( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 singleScattering = vec3( 0.0 );
	vec3 multiScattering = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScattering, multiScattering );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScattering, multiScattering );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuseAlbedo = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness );
		vec3 diffuse = irradiance * RECIPROCAL_PI * diffuseAlbedo * ( 1.0 - singleScattering - multiScattering );
	#else
		vec3 diffuse = irradiance * BRDF_Lambert( material.diffuseContribution ) * ( 1.0 - singleScattering - multiScattering );
	#endif
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		sheenSpecularIndirect += irradiance * material.sheenColor * sheenAlbedo * RECIPROCAL_PI;
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		diffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectDiffuse += diffuse;
}
void RE_IndirectSpecular_Physical( const in vec3 radiance, const in vec3 irradiance, const in vec3 clearcoatRadiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight) {
	#ifdef USE_CLEARCOAT
		clearcoatSpecularIndirect += clearcoatRadiance * EnvironmentBRDF( geometryClearcoatNormal, geometryViewDir, material.clearcoatF0, material.clearcoatF90, material.clearcoatRoughness );
	#endif
	#ifdef USE_SHEEN
		sheenSpecularIndirect += irradiance * material.sheenColor * IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness ) * RECIPROCAL_PI;
 	#endif
	vec3 singleScatteringDielectric = vec3( 0.0 );
	vec3 multiScatteringDielectric = vec3( 0.0 );
	vec3 singleScatteringMetallic = vec3( 0.0 );
	vec3 multiScatteringMetallic = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscatteringIridescence( material.dfg, material.diffuseColor, material.specularF90, material.iridescence, material.iridescenceF0Metallic, singleScatteringMetallic, multiScatteringMetallic );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscattering( material.dfg, material.diffuseColor, material.specularF90, singleScatteringMetallic, multiScatteringMetallic );
	#endif
	vec3 singleScattering = mix( singleScatteringDielectric, singleScatteringMetallic, material.metalness );
	vec3 multiScattering = mix( multiScatteringDielectric, multiScatteringMetallic, material.metalness );
	vec3 totalScatteringDielectric = singleScatteringDielectric + multiScatteringDielectric;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuse = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness ) * ( 1.0 - totalScatteringDielectric );
	#else
		vec3 diffuse = material.diffuseContribution * ( 1.0 - totalScatteringDielectric );
	#endif
	vec3 cosineWeightedIrradiance = irradiance * RECIPROCAL_PI;
	vec3 indirectSpecular = radiance * singleScattering;
	indirectSpecular += multiScattering * cosineWeightedIrradiance;
	vec3 indirectDiffuse = diffuse * cosineWeightedIrradiance;
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		indirectSpecular *= sheenEnergyComp;
		indirectDiffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectSpecular += indirectSpecular;
	reflectedLight.indirectDiffuse += indirectDiffuse;
}
#define RE_Direct				RE_Direct_Physical
#define RE_Direct_RectArea		RE_Direct_RectArea_Physical
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Physical
#define RE_IndirectSpecular		RE_IndirectSpecular_Physical
float computeSpecularOcclusion( const in float dotNV, const in float ambientOcclusion, const in float roughness ) {
	return saturate( pow( dotNV + ambientOcclusion, exp2( - 16.0 * roughness - 1.0 ) ) - 1.0 + ambientOcclusion );
}`,Ky=`
vec3 geometryPosition = - vViewPosition;
vec3 geometryNormal = normal;
vec3 geometryViewDir = ( isOrthographic ) ? vec3( 0, 0, 1 ) : normalize( vViewPosition );
vec3 geometryClearcoatNormal = vec3( 0.0 );
#ifdef USE_CLEARCOAT
	geometryClearcoatNormal = clearcoatNormal;
#endif
#ifdef USE_IRIDESCENCE
	float dotNVi = saturate( dot( normal, geometryViewDir ) );
	if ( material.iridescenceThickness == 0.0 ) {
		material.iridescence = 0.0;
	} else {
		material.iridescence = saturate( material.iridescence );
	}
	if ( material.iridescence > 0.0 ) {
		vec3 iridescenceFresnelDielectric = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.specularColor );
		vec3 iridescenceFresnelMetallic = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.diffuseColor );
		material.iridescenceFresnel = mix( iridescenceFresnelDielectric, iridescenceFresnelMetallic, material.metalness );
		material.iridescenceF0Dielectric = Schlick_to_F0( iridescenceFresnelDielectric, 1.0, dotNVi );
		material.iridescenceF0Metallic = Schlick_to_F0( iridescenceFresnelMetallic, 1.0, dotNVi );
	}
#endif
#ifdef STANDARD
	float dotNVms = saturate( dot( geometryNormal, geometryViewDir ) );
	material.dfg = texture2D( dfgLUT, vec2( material.roughness, dotNVms ) ).rg;
	#if ( NUM_SUN_LIGHTS > 0 || NUM_DIR_LIGHTS > 0 || NUM_POINT_LIGHTS > 0 || NUM_SPOT_LIGHTS > 0 )
		float EssMs = material.dfg.x + material.dfg.y;
		material.multiScatteringCompensation = 1.0 + material.specularColorBlended * ( 1.0 / EssMs - 1.0 );
	#endif
#endif
IncidentLight directLight;
#if ( NUM_POINT_LIGHTS > 0 ) && defined( RE_Direct )
	PointLight pointLight;
	#if defined( USE_SHADOWMAP ) && NUM_POINT_LIGHT_SHADOWS > 0
	PointLightShadow pointLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHTS; i ++ ) {
		pointLight = pointLights[ i ];
		getPointLightInfo( pointLight, geometryPosition, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_POINT_LIGHT_SHADOWS ) && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
		pointLightShadow = pointLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getPointShadow( pointShadowMap[ i ], pointLightShadow.shadowMapSize, pointLightShadow.shadowIntensity, pointLightShadow.shadowBias, pointLightShadow.shadowRadius, vPointShadowCoord[ i ], pointLightShadow.shadowCameraNear, pointLightShadow.shadowCameraFar ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SPOT_LIGHTS > 0 ) && defined( RE_Direct )
	SpotLight spotLight;
	vec4 spotColor;
	vec3 spotLightCoord;
	bool inSpotLightMap;
	#if defined( USE_SHADOWMAP ) && NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHTS; i ++ ) {
		spotLight = spotLights[ i ];
		getSpotLightInfo( spotLight, geometryPosition, directLight );
		#if ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#define SPOT_LIGHT_MAP_INDEX UNROLLED_LOOP_INDEX
		#elif ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		#define SPOT_LIGHT_MAP_INDEX NUM_SPOT_LIGHT_MAPS
		#else
		#define SPOT_LIGHT_MAP_INDEX ( UNROLLED_LOOP_INDEX - NUM_SPOT_LIGHT_SHADOWS + NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#endif
		#if ( SPOT_LIGHT_MAP_INDEX < NUM_SPOT_LIGHT_MAPS )
			spotLightCoord = vSpotLightCoord[ i ].xyz / vSpotLightCoord[ i ].w;
			inSpotLightMap = all( lessThan( abs( spotLightCoord * 2. - 1. ), vec3( 1.0 ) ) );
			spotColor = texture2D( spotLightMap[ SPOT_LIGHT_MAP_INDEX ], spotLightCoord.xy );
			directLight.color = inSpotLightMap ? directLight.color * spotColor.rgb : directLight.color;
		#endif
		#undef SPOT_LIGHT_MAP_INDEX
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		spotLightShadow = spotLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( spotShadowMap[ i ], spotLightShadow.shadowMapSize, spotLightShadow.shadowIntensity, spotLightShadow.shadowBias, spotLightShadow.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SUN_LIGHTS > 0 ) && defined( RE_Direct )
	SunLight sunLight;
	#if defined( USE_SHADOWMAP ) && NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHTS; i ++ ) {
		sunLight = sunLights[ i ];
		getSunLightInfo( sunLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SUN_LIGHT_SHADOWS )
		sunLightShadow = sunLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getSunShadow( sunShadowMap[ i ], sunLightShadow, UNROLLED_LOOP_INDEX ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_DIR_LIGHTS > 0 ) && defined( RE_Direct )
	DirectionalLight directionalLight;
	#if defined( USE_SHADOWMAP ) && NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHTS; i ++ ) {
		directionalLight = directionalLights[ i ];
		getDirectionalLightInfo( directionalLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_DIR_LIGHT_SHADOWS )
		directionalLightShadow = directionalLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( directionalShadowMap[ i ], directionalLightShadow.shadowMapSize, directionalLightShadow.shadowIntensity, directionalLightShadow.shadowBias, directionalLightShadow.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_RECT_AREA_LIGHTS > 0 ) && defined( RE_Direct_RectArea )
	RectAreaLight rectAreaLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_RECT_AREA_LIGHTS; i ++ ) {
		rectAreaLight = rectAreaLights[ i ];
		RE_Direct_RectArea( rectAreaLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if defined( RE_IndirectDiffuse )
	vec3 iblIrradiance = vec3( 0.0 );
	vec3 irradiance = getAmbientLightIrradiance( ambientLightColor );
	#if defined( USE_LIGHT_PROBES )
		irradiance += getLightProbeIrradiance( lightProbe, geometryNormal );
	#endif
	#if ( NUM_HEMI_LIGHTS > 0 )
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_HEMI_LIGHTS; i ++ ) {
			irradiance += getHemisphereLightIrradiance( hemisphereLights[ i ], geometryNormal );
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_LIGHT_PROBE_GRIDS > 0
		vec3 probeWorldPos = ( ( vec4( geometryPosition, 1.0 ) - viewMatrix[ 3 ] ) * viewMatrix ).xyz;
		vec3 probeWorldNormal = transformNormalByInverseViewMatrix( geometryNormal, viewMatrix );
		int probeGrid = - 1;
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( isInsideLightProbeGrid( probeWorldPos, probeWorldNormal, probesMin[ i ], probesMax[ i ], probesResolution[ i ] ) ) probeGrid = UNROLLED_LOOP_INDEX;
		}
		#pragma unroll_loop_end
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( probeGrid == UNROLLED_LOOP_INDEX ) irradiance += getLightProbeGridIrradiance( probesSH[ i ], probesMin[ i ], probesMax[ i ], probesResolution[ i ], probeWorldPos, probeWorldNormal );
		}
		#pragma unroll_loop_end
	#endif
#endif
#if defined( RE_IndirectSpecular )
	vec3 radiance = vec3( 0.0 );
	vec3 clearcoatRadiance = vec3( 0.0 );
#endif`,jy=`#if defined( RE_IndirectDiffuse )
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		vec3 lightMapIrradiance = lightMapTexel.rgb * lightMapIntensity;
		irradiance += lightMapIrradiance;
	#endif
	#if defined( USE_ENVMAP ) && defined( ENVMAP_TYPE_PMREM )
		#if defined( STANDARD ) || defined( LAMBERT ) || defined( PHONG )
			iblIrradiance += getIBLIrradiance( geometryNormal );
		#endif
	#endif
#endif
#if defined( USE_ENVMAP ) && defined( RE_IndirectSpecular )
	#ifdef USE_ANISOTROPY
		vec3 iblRadiance = getIBLAnisotropyRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
	#else
		vec3 iblRadiance = getIBLRadiance( geometryViewDir, geometryNormal, material.roughness );
	#endif
	#ifdef USE_RETROREFLECTION
		#ifdef USE_ANISOTROPY
			vec3 retroIBLRadiance = getIBLAnisotropyRetroRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
		#else
			vec3 retroIBLRadiance = getIBLRetroRadiance( geometryViewDir, geometryNormal, material.roughness );
		#endif
		iblRadiance = mix( iblRadiance, retroIBLRadiance, saturate( material.retroreflectivity ) );
	#endif
	radiance += iblRadiance;
	#ifdef USE_CLEARCOAT
		clearcoatRadiance += getIBLRadiance( geometryViewDir, geometryClearcoatNormal, material.clearcoatRoughness );
	#endif
#endif`,Qy=`#if defined( RE_IndirectDiffuse )
	#if defined( LAMBERT ) || defined( PHONG )
		irradiance += iblIrradiance;
	#endif
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,tx=`#if NUM_LIGHT_PROBE_GRIDS > 0
uniform highp sampler3D probesSH[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMin[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMax[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesResolution[ NUM_LIGHT_PROBE_GRIDS ];
bool isInsideLightProbeGrid( vec3 worldPos, vec3 worldNormal, vec3 probesMin, vec3 probesMax, vec3 probesResolution ) {
	vec3 spacing = ( probesMax - probesMin ) / probesResolution;
	vec3 samplePos = worldPos + worldNormal * spacing * 0.5;
	vec3 margin = spacing * 0.01;
	return all( greaterThanEqual( samplePos, probesMin - margin ) ) && all( lessThanEqual( samplePos, probesMax + margin ) );
}
vec3 getLightProbeGridIrradiance( highp sampler3D probesSH, vec3 probesMin, vec3 probesMax, vec3 probesResolution, vec3 worldPos, vec3 worldNormal ) {
	vec3 res = probesResolution;
	vec3 gridRange = probesMax - probesMin;
	vec3 probeSpacing = gridRange / res;
	vec3 samplePos = worldPos + worldNormal * probeSpacing * 0.5;
	vec3 uvw = clamp( ( samplePos - probesMin ) / gridRange, 0.5 / res, 1.0 - 0.5 / res );
	float nz          = res.z;
	float paddedSlices = nz + 2.0;
	float atlasDepth  = 7.0 * paddedSlices;
	float uvZBase     = uvw.z * nz + 1.0;
	vec4 s0 = texture( probesSH, vec3( uvw.xy, ( uvZBase                       ) / atlasDepth ) );
	vec4 s1 = texture( probesSH, vec3( uvw.xy, ( uvZBase +       paddedSlices   ) / atlasDepth ) );
	vec4 s2 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 2.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s3 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 3.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s4 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 4.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s5 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 5.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s6 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 6.0 * paddedSlices   ) / atlasDepth ) );
	vec3 c0 = s0.xyz;
	vec3 c1 = vec3( s0.w, s1.xy );
	vec3 c2 = vec3( s1.zw, s2.x );
	vec3 c3 = s2.yzw;
	vec3 c4 = s3.xyz;
	vec3 c5 = vec3( s3.w, s4.xy );
	vec3 c6 = vec3( s4.zw, s5.x );
	vec3 c7 = s5.yzw;
	vec3 c8 = s6.xyz;
	float x = worldNormal.x, y = worldNormal.y, z = worldNormal.z;
	vec3 result = c0 * 0.886227;
	result += c1 * 2.0 * 0.511664 * y;
	result += c2 * 2.0 * 0.511664 * z;
	result += c3 * 2.0 * 0.511664 * x;
	result += c4 * 2.0 * 0.429043 * x * y;
	result += c5 * 2.0 * 0.429043 * y * z;
	result += c6 * ( 0.743125 * z * z - 0.247708 );
	result += c7 * 2.0 * 0.429043 * x * z;
	result += c8 * 0.429043 * ( x * x - y * y );
	return max( result, vec3( 0.0 ) );
}
#endif`,ex=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,nx=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,ix=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,sx=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,rx=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,ox=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,ax=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
	#if defined( USE_POINTS_UV )
		vec2 uv = vUv;
	#else
		vec2 uv = ( uvTransform * vec3( gl_PointCoord.x, 1.0 - gl_PointCoord.y, 1 ) ).xy;
	#endif
#endif
#ifdef USE_MAP
	diffuseColor *= texture2D( map, uv );
#endif
#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, uv ).g;
#endif`,lx=`#if defined( USE_POINTS_UV )
	varying vec2 vUv;
#else
	#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
		uniform mat3 uvTransform;
	#endif
#endif
#ifdef USE_MAP
	uniform sampler2D map;
#endif
#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,cx=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,ux=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,hx=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,fx=`#if defined( USE_MORPHCOLORS )
	#if defined( USE_COLOR_ALPHA )
		vColor *= morphTargetBaseInfluence;
	#elif defined( USE_COLOR )
		vColor.rgb *= morphTargetBaseInfluence;
	#endif
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		#if defined( USE_COLOR_ALPHA )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ) * morphTargetInfluences[ i ];
		#elif defined( USE_COLOR )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor.rgb += getMorph( gl_VertexID, i, 2 ).rgb * morphTargetInfluences[ i ];
		#endif
	}
#endif`,dx=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,px=`#ifdef USE_MORPHTARGETS
	#ifndef USE_INSTANCING_MORPH
		uniform float morphTargetBaseInfluence;
		uniform float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	#endif
	uniform sampler2DArray morphTargetsTexture;
	uniform ivec2 morphTargetsTextureSize;
	vec4 getMorph( const in int vertexIndex, const in int morphTargetIndex, const in int offset ) {
		int texelIndex = vertexIndex * MORPHTARGETS_TEXTURE_STRIDE + offset;
		int y = texelIndex / morphTargetsTextureSize.x;
		int x = texelIndex - y * morphTargetsTextureSize.x;
		ivec3 morphUV = ivec3( x, y, morphTargetIndex );
		return texelFetch( morphTargetsTexture, morphUV, 0 );
	}
#endif`,mx=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,gx=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
#ifdef FLAT_SHADED
	vec3 fdx = dFdx( vViewPosition );
	vec3 fdy = dFdy( vViewPosition );
	vec3 normal = normalize( cross( fdx, fdy ) );
#else
	vec3 normal = normalize( vNormal );
	#ifdef DOUBLE_SIDED
		normal *= faceDirection;
	#endif
#endif
#if defined( USE_NORMALMAP_TANGENTSPACE ) || defined( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY )
	#ifdef USE_TANGENT
		mat3 tbn = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn = getTangentFrame( - vViewPosition, normal,
		#if defined( USE_NORMALMAP )
			vNormalMapUv
		#elif defined( USE_CLEARCOAT_NORMALMAP )
			vClearcoatNormalMapUv
		#else
			vUv
		#endif
		);
	#endif
	#ifdef DOUBLE_SIDED
		tbn[0] *= faceDirection;
		tbn[1] *= faceDirection;
	#endif
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	#ifdef USE_TANGENT
		mat3 tbn2 = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn2 = getTangentFrame( - vViewPosition, normal, vClearcoatNormalMapUv );
	#endif
	#ifdef DOUBLE_SIDED
		tbn2[0] *= faceDirection;
		tbn2[1] *= faceDirection;
	#endif
#endif
vec3 nonPerturbedNormal = normal;`,_x=`#ifdef USE_NORMALMAP_OBJECTSPACE
	normal = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#ifdef FLIP_SIDED
		normal = - normal;
	#endif
	#ifdef DOUBLE_SIDED
		normal = normal * faceDirection;
	#endif
	normal = normalize( normalMatrix * normal );
#elif defined( USE_NORMALMAP_TANGENTSPACE )
	vec3 mapN = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#if defined( USE_PACKED_NORMALMAP )
		mapN = vec3( mapN.xy, sqrt( saturate( 1.0 - dot( mapN.xy, mapN.xy ) ) ) );
	#endif
	mapN.xy *= normalScale;
	normal = normalize( tbn * mapN );
#elif defined( USE_BUMPMAP )
	normal = perturbNormalArb( - vViewPosition, normal, dHdxy_fwd(), faceDirection );
#endif`,vx=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,yx=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,xx=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
		#ifdef FLIP_SIDED
			vBitangent = - vBitangent;
		#endif
	#endif
#endif`,bx=`#ifdef USE_NORMALMAP
	uniform sampler2D normalMap;
	uniform vec2 normalScale;
#endif
#ifdef USE_NORMALMAP_OBJECTSPACE
	uniform mat3 normalMatrix;
#endif
#if ! defined ( USE_TANGENT ) && ( defined ( USE_NORMALMAP_TANGENTSPACE ) || defined ( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY ) )
	mat3 getTangentFrame( vec3 eye_pos, vec3 surf_norm, vec2 uv ) {
		vec3 q0 = dFdx( eye_pos.xyz );
		vec3 q1 = dFdy( eye_pos.xyz );
		vec2 st0 = dFdx( uv.st );
		vec2 st1 = dFdy( uv.st );
		vec3 N = surf_norm;
		vec3 q1perp = cross( q1, N );
		vec3 q0perp = cross( N, q0 );
		vec3 T = q1perp * st0.x + q0perp * st1.x;
		vec3 B = q1perp * st0.y + q0perp * st1.y;
		float det = max( dot( T, T ), dot( B, B ) );
		float scale = ( det == 0.0 ) ? 0.0 : inversesqrt( det );
		return mat3( T * scale, B * scale, N );
	}
#endif`,Mx=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,Sx=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,wx=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,Tx=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,Ax=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,Ex=`vec3 packNormalToRGB( const in vec3 normal ) {
	return normalize( normal ) * 0.5 + 0.5;
}
vec3 unpackRGBToNormal( const in vec3 rgb ) {
	return 2.0 * rgb.xyz - 1.0;
}
const float PackUpscale = 256. / 255.;const float UnpackDownscale = 255. / 256.;const float ShiftRight8 = 1. / 256.;
const float Inv255 = 1. / 255.;
const vec4 PackFactors = vec4( 1.0, 256.0, 256.0 * 256.0, 256.0 * 256.0 * 256.0 );
const vec2 UnpackFactors2 = vec2( UnpackDownscale, 1.0 / PackFactors.g );
const vec3 UnpackFactors3 = vec3( UnpackDownscale / PackFactors.rg, 1.0 / PackFactors.b );
const vec4 UnpackFactors4 = vec4( UnpackDownscale / PackFactors.rgb, 1.0 / PackFactors.a );
vec4 packDepthToRGBA( const in float v ) {
	if( v <= 0.0 )
		return vec4( 0., 0., 0., 0. );
	if( v >= 1.0 )
		return vec4( 1., 1., 1., 1. );
	float vuf;
	float af = modf( v * PackFactors.a, vuf );
	float bf = modf( vuf * ShiftRight8, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec4( vuf * Inv255, gf * PackUpscale, bf * PackUpscale, af );
}
vec3 packDepthToRGB( const in float v ) {
	if( v <= 0.0 )
		return vec3( 0., 0., 0. );
	if( v >= 1.0 )
		return vec3( 1., 1., 1. );
	float vuf;
	float bf = modf( v * PackFactors.b, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec3( vuf * Inv255, gf * PackUpscale, bf );
}
vec2 packDepthToRG( const in float v ) {
	if( v <= 0.0 )
		return vec2( 0., 0. );
	if( v >= 1.0 )
		return vec2( 1., 1. );
	float vuf;
	float gf = modf( v * 256., vuf );
	return vec2( vuf * Inv255, gf );
}
float unpackRGBAToDepth( const in vec4 v ) {
	return dot( v, UnpackFactors4 );
}
float unpackRGBToDepth( const in vec3 v ) {
	return dot( v, UnpackFactors3 );
}
float unpackRGToDepth( const in vec2 v ) {
	return v.r * UnpackFactors2.r + v.g * UnpackFactors2.g;
}
vec4 pack2HalfToRGBA( const in vec2 v ) {
	vec4 r = vec4( v.x, fract( v.x * 255.0 ), v.y, fract( v.y * 255.0 ) );
	return vec4( r.x - r.y / 255.0, r.y, r.z - r.w / 255.0, r.w );
}
vec2 unpackRGBATo2Half( const in vec4 v ) {
	return vec2( v.x + ( v.y / 255.0 ), v.z + ( v.w / 255.0 ) );
}
float viewZToOrthographicDepth( const in float viewZ, const in float near, const in float far ) {
	return ( viewZ + near ) / ( near - far );
}
float orthographicDepthToViewZ( const in float depth, const in float near, const in float far ) {
	#ifdef USE_REVERSED_DEPTH_BUFFER
	
		return depth * ( far - near ) - far;
	#else
		return depth * ( near - far ) - near;
	#endif
}
float viewZToPerspectiveDepth( const in float viewZ, const in float near, const in float far ) {
	return ( ( near + viewZ ) * far ) / ( ( far - near ) * viewZ );
}
float perspectiveDepthToViewZ( const in float depth, const in float near, const in float far ) {
	
	#ifdef USE_REVERSED_DEPTH_BUFFER
		return ( near * far ) / ( ( near - far ) * depth - near );
	#else
		return ( near * far ) / ( ( far - near ) * depth - far );
	#endif
}`,Cx=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,Rx=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,Px=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,Ix=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,Dx=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,Lx=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,Nx=`#if NUM_SPOT_LIGHT_COORDS > 0
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#if NUM_SPOT_LIGHT_MAPS > 0
	uniform sampler2D spotLightMap[ NUM_SPOT_LIGHT_MAPS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		#define SUN_LIGHT_CASCADES 2
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#else
			uniform sampler2D sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#endif
		uniform mat4 sunShadowMatrix[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		uniform vec4 sunShadowCascade[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
		struct SunLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SunLightShadow sunLightShadows[ NUM_SUN_LIGHT_SHADOWS ];
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#else
			uniform sampler2D directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#endif
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#else
			uniform sampler2D spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#endif
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform samplerCubeShadow pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#elif defined( SHADOWMAP_TYPE_BASIC )
			uniform samplerCube pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#endif
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float interleavedGradientNoise( vec2 position ) {
			return fract( 52.9829189 * fract( dot( position, vec2( 0.06711056, 0.00583715 ) ) ) );
		}
		vec2 vogelDiskSample( int sampleIndex, int samplesCount, float phi ) {
			const float goldenAngle = 2.399963229728653;
			float r = sqrt( ( float( sampleIndex ) + 0.5 ) / float( samplesCount ) );
			float theta = float( sampleIndex ) * goldenAngle + phi;
			return vec2( cos( theta ), sin( theta ) ) * r;
		}
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float getShadow( sampler2DShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 texelSize = vec2( 1.0 ) / shadowMapSize;
				vec2 radius = shadowRadius * texelSize;
				float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
				shadow = (
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 0, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 1, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 2, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 3, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 4, 5, phi ) * radius, shadowCoord.z ) )
				) * 0.2;
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#elif defined( SHADOWMAP_TYPE_VSM )
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 distribution = texture2D( shadowMap, shadowCoord.xy ).rg;
				float mean = distribution.x;
				float variance = distribution.y * distribution.y;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					float hard_shadow = step( mean, shadowCoord.z );
				#else
					float hard_shadow = step( shadowCoord.z, mean );
				#endif
				
				if ( hard_shadow == 1.0 ) {
					shadow = 1.0;
				} else {
					variance = max( variance, 0.0000001 );
					float d = shadowCoord.z - mean;
					float p_max = variance / ( variance + d * d );
					p_max = clamp( ( p_max - 0.3 ) / 0.65, 0.0, 1.0 );
					shadow = max( hard_shadow, p_max );
				}
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#else
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				float depth = texture2D( shadowMap, shadowCoord.xy ).r;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					shadow = step( depth, shadowCoord.z );
				#else
					shadow = step( shadowCoord.z, depth );
				#endif
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#endif
	#if NUM_SUN_LIGHT_SHADOWS > 0
		float getSunShadow(
			#if defined( SHADOWMAP_TYPE_PCF )
				sampler2DShadow shadowMap,
			#else
				sampler2D shadowMap,
			#endif
			SunLightShadow sunLightShadow,
			int shadowIndex
		) {
			vec4 shadowWorldPosition = vec4( vSunShadowWorldPosition.xyz + vSunShadowWorldNormal * sunLightShadow.shadowNormalBias, 1.0 );
			float viewDepth = vSunShadowWorldPosition.w;
			int cascadeOffset = shadowIndex * SUN_LIGHT_CASCADES;
			float shadow = 1.0;
			for ( int i = SUN_LIGHT_CASCADES - 1; i >= 0; i -- ) {
				vec4 cascade = sunShadowCascade[ cascadeOffset + i ];
				if ( viewDepth >= cascade.x && viewDepth < cascade.y ) {
					float cascadeShadow = getShadow(
						shadowMap,
						sunLightShadow.shadowMapSize,
						sunLightShadow.shadowIntensity,
						sunLightShadow.shadowBias,
						sunLightShadow.shadowRadius,
						sunShadowMatrix[ cascadeOffset + i ] * shadowWorldPosition
					);
					shadow = mix( cascadeShadow, shadow, smoothstep( cascade.z, cascade.y, viewDepth ) );
				}
			}
			return shadow;
		}
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
	#if defined( SHADOWMAP_TYPE_PCF )
	float getPointShadow( samplerCubeShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 bd3D = normalize( lightToPosition );
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float lightDistance = length( lightToPosition );
			float depthRange = shadowCameraFar - shadowCameraNear;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				float depthA = - shadowCameraNear / depthRange - shadowBias;
				float depthB = shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#else
				float depthA = shadowCameraFar / depthRange + shadowBias;
				float depthB = - shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#endif
			float texelSize = shadowRadius / shadowMapSize.x;
			vec3 absDir = abs( bd3D );
			vec3 tangent = absDir.x > absDir.z ? vec3( 0.0, 1.0, 0.0 ) : vec3( 1.0, 0.0, 0.0 );
			tangent = normalize( cross( bd3D, tangent ) );
			vec3 bitangent = cross( bd3D, tangent );
			float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
			shadow = 0.0;
			for ( int i = 0; i < 5; i ++ ) {
				vec2 offset = vogelDiskSample( i, 5, phi );
				vec3 direction = bd3D + ( tangent * offset.x + bitangent * offset.y ) * texelSize;
				vec3 absDirection = abs( direction );
				float dp = depthA + depthB / max( max( absDirection.x, absDirection.y ), absDirection.z );
				shadow += texture( shadowMap, vec4( direction, dp ) );
			}
			shadow *= 0.2;
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#elif defined( SHADOWMAP_TYPE_BASIC )
	float getPointShadow( samplerCube shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float dp = ( shadowCameraFar * ( viewSpaceZ - shadowCameraNear ) ) / ( viewSpaceZ * ( shadowCameraFar - shadowCameraNear ) );
			dp += shadowBias;
			vec3 bd3D = normalize( lightToPosition );
			float depth = textureCube( shadowMap, bd3D ).r;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				depth = 1.0 - depth;
			#endif
			shadow = step( dp, depth );
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#endif
	#endif
#endif`,Ux=`#if NUM_SPOT_LIGHT_COORDS > 0
	uniform mat4 spotLightMatrix[ NUM_SPOT_LIGHT_COORDS ];
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		uniform mat4 directionalShadowMatrix[ NUM_DIR_LIGHT_SHADOWS ];
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		uniform mat4 pointShadowMatrix[ NUM_POINT_LIGHT_SHADOWS ];
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
#endif`,Fx=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_SUN_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
	#ifdef HAS_NORMAL
		vec3 shadowWorldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
	#else
		vec3 shadowWorldNormal = vec3( 0.0 );
	#endif
	vec4 shadowWorldPosition;
#endif
#if defined( USE_SHADOWMAP )
	#if NUM_SUN_LIGHT_SHADOWS > 0
		vSunShadowWorldPosition = vec4( worldPosition.xyz, - mvPosition.z );
		vSunShadowWorldNormal = shadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * directionalLightShadows[ i ].shadowNormalBias, 0 );
			vDirectionalShadowCoord[ i ] = directionalShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * pointLightShadows[ i ].shadowNormalBias, 0 );
			vPointShadowCoord[ i ] = pointShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
#endif
#if NUM_SPOT_LIGHT_COORDS > 0
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_COORDS; i ++ ) {
		shadowWorldPosition = worldPosition;
		#if ( defined( USE_SHADOWMAP ) && UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
			shadowWorldPosition.xyz += shadowWorldNormal * spotLightShadows[ i ].shadowNormalBias;
		#endif
		vSpotLightCoord[ i ] = spotLightMatrix[ i ] * shadowWorldPosition;
	}
	#pragma unroll_loop_end
#endif`,Ox=`float getShadowMask() {
	float shadow = 1.0;
	#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHT_SHADOWS; i ++ ) {
		sunLight = sunLightShadows[ i ];
		shadow *= receiveShadow ? getSunShadow( sunShadowMap[ i ], sunLight, UNROLLED_LOOP_INDEX ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
		directionalLight = directionalLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( directionalShadowMap[ i ], directionalLight.shadowMapSize, directionalLight.shadowIntensity, directionalLight.shadowBias, directionalLight.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_SHADOWS; i ++ ) {
		spotLight = spotLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( spotShadowMap[ i ], spotLight.shadowMapSize, spotLight.shadowIntensity, spotLight.shadowBias, spotLight.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0 && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
	PointLightShadow pointLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
		pointLight = pointLightShadows[ i ];
		shadow *= receiveShadow ? getPointShadow( pointShadowMap[ i ], pointLight.shadowMapSize, pointLight.shadowIntensity, pointLight.shadowBias, pointLight.shadowRadius, vPointShadowCoord[ i ], pointLight.shadowCameraNear, pointLight.shadowCameraFar ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#endif
	return shadow;
}`,Bx=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,kx=`#ifdef USE_SKINNING
	uniform mat4 bindMatrix;
	uniform mat4 bindMatrixInverse;
	uniform highp sampler2D boneTexture;
	mat4 getBoneMatrix( const in float i ) {
		int size = textureSize( boneTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( boneTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( boneTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( boneTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( boneTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
#endif`,zx=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,Vx=`#ifdef USE_SKINNING
	mat4 skinMatrix = mat4( 0.0 );
	skinMatrix += skinWeight.x * boneMatX;
	skinMatrix += skinWeight.y * boneMatY;
	skinMatrix += skinWeight.z * boneMatZ;
	skinMatrix += skinWeight.w * boneMatW;
	skinMatrix = bindMatrixInverse * skinMatrix * bindMatrix;
	objectNormal = vec4( skinMatrix * vec4( objectNormal, 0.0 ) ).xyz;
	#ifdef USE_TANGENT
		objectTangent = vec4( skinMatrix * vec4( objectTangent, 0.0 ) ).xyz;
	#endif
#endif`,Gx=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,Hx=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,Wx=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,Xx=`#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
uniform float toneMappingExposure;
vec3 LinearToneMapping( vec3 color ) {
	return saturate( toneMappingExposure * color );
}
vec3 ReinhardToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	return saturate( color / ( vec3( 1.0 ) + color ) );
}
vec3 CineonToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	color = max( vec3( 0.0 ), color - 0.004 );
	return pow( ( color * ( 6.2 * color + 0.5 ) ) / ( color * ( 6.2 * color + 1.7 ) + 0.06 ), vec3( 2.2 ) );
}
vec3 RRTAndODTFit( vec3 v ) {
	vec3 a = v * ( v + 0.0245786 ) - 0.000090537;
	vec3 b = v * ( 0.983729 * v + 0.4329510 ) + 0.238081;
	return a / b;
}
vec3 ACESFilmicToneMapping( vec3 color ) {
	const mat3 ACESInputMat = mat3(
		vec3( 0.59719, 0.07600, 0.02840 ),		vec3( 0.35458, 0.90834, 0.13383 ),
		vec3( 0.04823, 0.01566, 0.83777 )
	);
	const mat3 ACESOutputMat = mat3(
		vec3(  1.60475, -0.10208, -0.00327 ),		vec3( -0.53108,  1.10813, -0.07276 ),
		vec3( -0.07367, -0.00605,  1.07602 )
	);
	color *= toneMappingExposure / 0.6;
	color = ACESInputMat * color;
	color = RRTAndODTFit( color );
	color = ACESOutputMat * color;
	return saturate( color );
}
const mat3 LINEAR_REC2020_TO_LINEAR_SRGB = mat3(
	vec3( 1.6605, - 0.1246, - 0.0182 ),
	vec3( - 0.5876, 1.1329, - 0.1006 ),
	vec3( - 0.0728, - 0.0083, 1.1187 )
);
const mat3 LINEAR_SRGB_TO_LINEAR_REC2020 = mat3(
	vec3( 0.6274, 0.0691, 0.0164 ),
	vec3( 0.3293, 0.9195, 0.0880 ),
	vec3( 0.0433, 0.0113, 0.8956 )
);
vec3 agxDefaultContrastApprox( vec3 x ) {
	vec3 x2 = x * x;
	vec3 x4 = x2 * x2;
	return + 15.5 * x4 * x2
		- 40.14 * x4 * x
		+ 31.96 * x4
		- 6.868 * x2 * x
		+ 0.4298 * x2
		+ 0.1191 * x
		- 0.00232;
}
vec3 AgXToneMapping( vec3 color ) {
	const mat3 AgXInsetMatrix = mat3(
		vec3( 0.856627153315983, 0.137318972929847, 0.11189821299995 ),
		vec3( 0.0951212405381588, 0.761241990602591, 0.0767994186031903 ),
		vec3( 0.0482516061458583, 0.101439036467562, 0.811302368396859 )
	);
	const mat3 AgXOutsetMatrix = mat3(
		vec3( 1.1271005818144368, - 0.1413297634984383, - 0.14132976349843826 ),
		vec3( - 0.11060664309660323, 1.157823702216272, - 0.11060664309660294 ),
		vec3( - 0.016493938717834573, - 0.016493938717834257, 1.2519364065950405 )
	);
	const float AgxMinEv = - 12.47393;	const float AgxMaxEv = 4.026069;
	color *= toneMappingExposure;
	color = LINEAR_SRGB_TO_LINEAR_REC2020 * color;
	color = AgXInsetMatrix * color;
	color = max( color, 1e-10 );	color = log2( color );
	color = ( color - AgxMinEv ) / ( AgxMaxEv - AgxMinEv );
	color = clamp( color, 0.0, 1.0 );
	color = agxDefaultContrastApprox( color );
	color = AgXOutsetMatrix * color;
	color = pow( max( vec3( 0.0 ), color ), vec3( 2.2 ) );
	color = LINEAR_REC2020_TO_LINEAR_SRGB * color;
	color = clamp( color, 0.0, 1.0 );
	return color;
}
vec3 NeutralToneMapping( vec3 color ) {
	const float StartCompression = 0.8 - 0.04;
	const float Desaturation = 0.15;
	color *= toneMappingExposure;
	float x = min( color.r, min( color.g, color.b ) );
	float offset = x < 0.08 ? x - 6.25 * x * x : 0.04;
	color -= offset;
	float peak = max( color.r, max( color.g, color.b ) );
	if ( peak < StartCompression ) return color;
	float d = 1. - StartCompression;
	float newPeak = 1. - d * d / ( peak + d - StartCompression );
	color *= newPeak / peak;
	float g = 1. - 1. / ( Desaturation * ( peak - newPeak ) + 1. );
	return mix( color, vec3( newPeak ), g );
}
vec3 CustomToneMapping( vec3 color ) { return color; }`,qx=`#ifdef USE_TRANSMISSION
	material.transmission = transmission;
	material.transmissionAlpha = 1.0;
	material.thickness = thickness;
	material.attenuationDistance = attenuationDistance;
	material.attenuationColor = attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		material.transmission *= texture2D( transmissionMap, vTransmissionMapUv ).r;
	#endif
	#ifdef USE_THICKNESSMAP
		material.thickness *= texture2D( thicknessMap, vThicknessMapUv ).g;
	#endif
	vec3 pos = vWorldPosition;
	vec3 v = normalize( cameraPosition - pos );
	vec3 n = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec4 transmitted = getIBLVolumeRefraction(
		n, v, material.roughness, material.diffuseContribution, material.specularColorBlended, material.specularF90,
		pos, modelMatrix, viewMatrix, projectionMatrix, material.dispersion, material.ior, material.thickness,
		material.attenuationColor, material.attenuationDistance );
	material.transmissionAlpha = mix( material.transmissionAlpha, transmitted.a, material.transmission );
	totalDiffuse = mix( totalDiffuse, transmitted.rgb, material.transmission );
#endif`,Yx=`#ifdef USE_TRANSMISSION
	uniform float transmission;
	uniform float thickness;
	uniform float attenuationDistance;
	uniform vec3 attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		uniform sampler2D transmissionMap;
	#endif
	#ifdef USE_THICKNESSMAP
		uniform sampler2D thicknessMap;
	#endif
	uniform vec2 transmissionSamplerSize;
	uniform sampler2D transmissionSamplerMap;
	uniform mat4 modelMatrix;
	uniform mat4 projectionMatrix;
	varying vec3 vWorldPosition;
	float w0( float a ) {
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - a + 3.0 ) - 3.0 ) + 1.0 );
	}
	float w1( float a ) {
		return ( 1.0 / 6.0 ) * ( a *  a * ( 3.0 * a - 6.0 ) + 4.0 );
	}
	float w2( float a ){
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - 3.0 * a + 3.0 ) + 3.0 ) + 1.0 );
	}
	float w3( float a ) {
		return ( 1.0 / 6.0 ) * ( a * a * a );
	}
	float g0( float a ) {
		return w0( a ) + w1( a );
	}
	float g1( float a ) {
		return w2( a ) + w3( a );
	}
	float h0( float a ) {
		return - 1.0 + w1( a ) / ( w0( a ) + w1( a ) );
	}
	float h1( float a ) {
		return 1.0 + w3( a ) / ( w2( a ) + w3( a ) );
	}
	vec4 bicubic( sampler2D tex, vec2 uv, vec4 texelSize, float lod ) {
		uv = uv * texelSize.zw + 0.5;
		vec2 iuv = floor( uv );
		vec2 fuv = fract( uv );
		float g0x = g0( fuv.x );
		float g1x = g1( fuv.x );
		float h0x = h0( fuv.x );
		float h1x = h1( fuv.x );
		float h0y = h0( fuv.y );
		float h1y = h1( fuv.y );
		vec2 p0 = ( vec2( iuv.x + h0x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p1 = ( vec2( iuv.x + h1x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p2 = ( vec2( iuv.x + h0x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		vec2 p3 = ( vec2( iuv.x + h1x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		return g0( fuv.y ) * ( g0x * textureLod( tex, p0, lod ) + g1x * textureLod( tex, p1, lod ) ) +
			g1( fuv.y ) * ( g0x * textureLod( tex, p2, lod ) + g1x * textureLod( tex, p3, lod ) );
	}
	vec4 textureBicubic( sampler2D sampler, vec2 uv, float lod ) {
		vec2 fLodSize = vec2( textureSize( sampler, int( lod ) ) );
		vec2 cLodSize = vec2( textureSize( sampler, int( lod + 1.0 ) ) );
		vec2 fLodSizeInv = 1.0 / fLodSize;
		vec2 cLodSizeInv = 1.0 / cLodSize;
		vec4 fSample = bicubic( sampler, uv, vec4( fLodSizeInv, fLodSize ), floor( lod ) );
		vec4 cSample = bicubic( sampler, uv, vec4( cLodSizeInv, cLodSize ), ceil( lod ) );
		return mix( fSample, cSample, fract( lod ) );
	}
	vec3 getVolumeTransmissionRay( const in vec3 n, const in vec3 v, const in float thickness, const in float ior, const in mat4 modelMatrix ) {
		vec3 refractionVector = refract( - v, normalize( n ), 1.0 / ior );
		vec3 modelScale;
		modelScale.x = length( vec3( modelMatrix[ 0 ].xyz ) );
		modelScale.y = length( vec3( modelMatrix[ 1 ].xyz ) );
		modelScale.z = length( vec3( modelMatrix[ 2 ].xyz ) );
		return normalize( refractionVector ) * thickness * modelScale;
	}
	float applyIorToRoughness( const in float roughness, const in float ior ) {
		return roughness * clamp( ior * 2.0 - 2.0, 0.0, 1.0 );
	}
	vec4 getTransmissionSample( const in vec2 fragCoord, const in float roughness, const in float ior ) {
		float lod = log2( transmissionSamplerSize.x ) * applyIorToRoughness( roughness, ior );
		return textureBicubic( transmissionSamplerMap, fragCoord.xy, lod );
	}
	vec3 volumeAttenuation( const in float transmissionDistance, const in vec3 attenuationColor, const in float attenuationDistance ) {
		if ( isinf( attenuationDistance ) ) {
			return vec3( 1.0 );
		} else {
			vec3 attenuationCoefficient = -log( attenuationColor ) / attenuationDistance;
			vec3 transmittance = exp( - attenuationCoefficient * transmissionDistance );			return transmittance;
		}
	}
	vec4 getIBLVolumeRefraction( const in vec3 n, const in vec3 v, const in float roughness, const in vec3 diffuseColor,
		const in vec3 specularColor, const in float specularF90, const in vec3 position, const in mat4 modelMatrix,
		const in mat4 viewMatrix, const in mat4 projMatrix, const in float dispersion, const in float ior, const in float thickness,
		const in vec3 attenuationColor, const in float attenuationDistance ) {
		vec4 transmittedLight;
		vec3 transmittance;
		#ifdef USE_DISPERSION
			float halfSpread = ( ior - 1.0 ) * 0.025 * dispersion;
			vec3 iors = vec3( ior - halfSpread, ior, ior + halfSpread );
			for ( int i = 0; i < 3; i ++ ) {
				vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, iors[ i ], modelMatrix );
				vec3 refractedRayExit = position + transmissionRay;
				vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
				vec2 refractionCoords = ndcPos.xy / ndcPos.w;
				refractionCoords += 1.0;
				refractionCoords /= 2.0;
				vec4 transmissionSample = getTransmissionSample( refractionCoords, roughness, iors[ i ] );
				transmittedLight[ i ] = transmissionSample[ i ];
				transmittedLight.a += transmissionSample.a;
				transmittance[ i ] = diffuseColor[ i ] * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance )[ i ];
			}
			transmittedLight.a /= 3.0;
		#else
			vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, ior, modelMatrix );
			vec3 refractedRayExit = position + transmissionRay;
			vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
			vec2 refractionCoords = ndcPos.xy / ndcPos.w;
			refractionCoords += 1.0;
			refractionCoords /= 2.0;
			transmittedLight = getTransmissionSample( refractionCoords, roughness, ior );
			transmittance = diffuseColor * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance );
		#endif
		vec3 attenuatedColor = transmittance * transmittedLight.rgb;
		vec3 F = EnvironmentBRDF( n, v, specularColor, specularF90, roughness );
		float transmittanceFactor = ( transmittance.r + transmittance.g + transmittance.b ) / 3.0;
		return vec4( ( 1.0 - F ) * attenuatedColor, 1.0 - ( 1.0 - transmittedLight.a ) * transmittanceFactor );
	}
#endif`,$x=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_SPECULARMAP
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,Zx=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	uniform mat3 mapTransform;
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	uniform mat3 alphaMapTransform;
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	uniform mat3 lightMapTransform;
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	uniform mat3 aoMapTransform;
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	uniform mat3 bumpMapTransform;
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	uniform mat3 normalMapTransform;
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_DISPLACEMENTMAP
	uniform mat3 displacementMapTransform;
	varying vec2 vDisplacementMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	uniform mat3 emissiveMapTransform;
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	uniform mat3 metalnessMapTransform;
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	uniform mat3 roughnessMapTransform;
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	uniform mat3 diffuseRoughnessMapTransform;
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	uniform mat3 anisotropyMapTransform;
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	uniform mat3 clearcoatMapTransform;
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform mat3 clearcoatNormalMapTransform;
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform mat3 clearcoatRoughnessMapTransform;
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	uniform mat3 sheenColorMapTransform;
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	uniform mat3 sheenRoughnessMapTransform;
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	uniform mat3 iridescenceMapTransform;
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform mat3 iridescenceThicknessMapTransform;
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SPECULARMAP
	uniform mat3 specularMapTransform;
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	uniform mat3 specularColorMapTransform;
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	uniform mat3 specularIntensityMapTransform;
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,Jx=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	vUv = vec3( uv, 1 ).xy;
#endif
#ifdef USE_MAP
	vMapUv = ( mapTransform * vec3( MAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ALPHAMAP
	vAlphaMapUv = ( alphaMapTransform * vec3( ALPHAMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_LIGHTMAP
	vLightMapUv = ( lightMapTransform * vec3( LIGHTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_AOMAP
	vAoMapUv = ( aoMapTransform * vec3( AOMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_BUMPMAP
	vBumpMapUv = ( bumpMapTransform * vec3( BUMPMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_NORMALMAP
	vNormalMapUv = ( normalMapTransform * vec3( NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DISPLACEMENTMAP
	vDisplacementMapUv = ( displacementMapTransform * vec3( DISPLACEMENTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_EMISSIVEMAP
	vEmissiveMapUv = ( emissiveMapTransform * vec3( EMISSIVEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_METALNESSMAP
	vMetalnessMapUv = ( metalnessMapTransform * vec3( METALNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ROUGHNESSMAP
	vRoughnessMapUv = ( roughnessMapTransform * vec3( ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	vDiffuseRoughnessMapUv = ( diffuseRoughnessMapTransform * vec3( DIFFUSE_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ANISOTROPYMAP
	vAnisotropyMapUv = ( anisotropyMapTransform * vec3( ANISOTROPYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOATMAP
	vClearcoatMapUv = ( clearcoatMapTransform * vec3( CLEARCOATMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	vClearcoatNormalMapUv = ( clearcoatNormalMapTransform * vec3( CLEARCOAT_NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	vClearcoatRoughnessMapUv = ( clearcoatRoughnessMapTransform * vec3( CLEARCOAT_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCEMAP
	vIridescenceMapUv = ( iridescenceMapTransform * vec3( IRIDESCENCEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	vIridescenceThicknessMapUv = ( iridescenceThicknessMapTransform * vec3( IRIDESCENCE_THICKNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_COLORMAP
	vSheenColorMapUv = ( sheenColorMapTransform * vec3( SHEEN_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	vSheenRoughnessMapUv = ( sheenRoughnessMapTransform * vec3( SHEEN_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULARMAP
	vSpecularMapUv = ( specularMapTransform * vec3( SPECULARMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_COLORMAP
	vSpecularColorMapUv = ( specularColorMapTransform * vec3( SPECULAR_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	vSpecularIntensityMapUv = ( specularIntensityMapTransform * vec3( SPECULAR_INTENSITYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_TRANSMISSIONMAP
	vTransmissionMapUv = ( transmissionMapTransform * vec3( TRANSMISSIONMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_THICKNESSMAP
	vThicknessMapUv = ( thicknessMapTransform * vec3( THICKNESSMAP_UV, 1 ) ).xy;
#endif`,Kx=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`,jx=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,Qx=`uniform sampler2D t2D;
uniform float backgroundIntensity;
varying vec2 vUv;
void main() {
	vec4 texColor = texture2D( t2D, vUv );
	#ifdef DECODE_VIDEO_TEXTURE
		texColor = vec4( mix( pow( texColor.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), texColor.rgb * 0.0773993808, vec3( lessThanEqual( texColor.rgb, vec3( 0.04045 ) ) ) ), texColor.w );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,tb=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,eb=`uniform float backgroundBlurriness;
uniform float backgroundIntensity;
uniform mat3 backgroundRotation;
varying vec3 vWorldDirection;
#include <envmap_common_pars_fragment>
void main() {
	#ifdef ENVMAP_TYPE_PMREM
		vec4 texColor = textureLod( envMap, backgroundRotation * vWorldDirection, roughnessToMip( backgroundBlurriness ) );
	#else
		vec4 texColor = textureCube( envMap, backgroundRotation * vWorldDirection );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,nb=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,ib=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,sb=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
varying vec2 vHighPrecisionZW;
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vHighPrecisionZW = gl_Position.zw;
}`,rb=`#if DEPTH_PACKING == 3200
	uniform float opacity;
#endif
#include <common>
#include <packing>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
varying vec2 vHighPrecisionZW;
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#if DEPTH_PACKING == 3200
		diffuseColor.a = opacity;
	#endif
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <logdepthbuf_fragment>
	#ifdef USE_REVERSED_DEPTH_BUFFER
		float fragCoordZ = vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ];
	#else
		float fragCoordZ = 0.5 * vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ] + 0.5;
	#endif
	#if DEPTH_PACKING == 3200
		gl_FragColor = vec4( vec3( 1.0 - fragCoordZ ), opacity );
	#elif DEPTH_PACKING == 3201
		gl_FragColor = packDepthToRGBA( fragCoordZ );
	#elif DEPTH_PACKING == 3202
		gl_FragColor = vec4( packDepthToRGB( fragCoordZ ), 1.0 );
	#elif DEPTH_PACKING == 3203
		gl_FragColor = vec4( packDepthToRG( fragCoordZ ), 0.0, 1.0 );
	#endif
}`,ob=`#define DISTANCE
varying vec3 vWorldPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <worldpos_vertex>
	#include <clipping_planes_vertex>
	vWorldPosition = worldPosition.xyz;
}`,ab=`#define DISTANCE
uniform vec3 referencePosition;
uniform float nearDistance;
uniform float farDistance;
varying vec3 vWorldPosition;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	float dist = length( vWorldPosition - referencePosition );
	dist = ( dist - nearDistance ) / ( farDistance - nearDistance );
	dist = saturate( dist );
	gl_FragColor = vec4( dist, 0.0, 0.0, 1.0 );
}`,lb=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,cb=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,ub=`uniform float scale;
attribute float lineDistance;
varying float vLineDistance;
#include <common>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	vLineDistance = scale * lineDistance;
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,hb=`uniform vec3 diffuse;
uniform float opacity;
uniform float dashSize;
uniform float totalSize;
varying float vLineDistance;
#include <common>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	if ( mod( vLineDistance, totalSize ) > dashSize ) {
		discard;
	}
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,fb=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#if defined ( USE_ENVMAP ) || defined ( USE_SKINNING )
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinbase_vertex>
		#include <skinnormal_vertex>
		#include <defaultnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <fog_vertex>
}`,db=`uniform vec3 diffuse;
uniform float opacity;
#ifndef FLAT_SHADED
	varying vec3 vNormal;
#endif
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <fog_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		reflectedLight.indirectDiffuse += lightMapTexel.rgb * lightMapIntensity * RECIPROCAL_PI;
	#else
		reflectedLight.indirectDiffuse += vec3( 1.0 );
	#endif
	#include <aomap_fragment>
	reflectedLight.indirectDiffuse *= diffuseColor.rgb;
	vec3 outgoingLight = reflectedLight.indirectDiffuse;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,pb=`#define LAMBERT
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,mb=`#define LAMBERT
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_lambert_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_lambert_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,gb=`#define MATCAP
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <displacementmap_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
	vViewPosition = - mvPosition.xyz;
}`,_b=`#define MATCAP
uniform vec3 diffuse;
uniform float opacity;
uniform sampler2D matcap;
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	vec3 viewDir = normalize( vViewPosition );
	vec3 x = normalize( vec3( viewDir.z, 0.0, - viewDir.x ) );
	vec3 y = cross( viewDir, x );
	vec2 uv = vec2( dot( x, normal ), dot( y, normal ) ) * 0.495 + 0.5;
	#ifdef USE_MATCAP
		vec4 matcapColor = texture2D( matcap, uv );
	#else
		vec4 matcapColor = vec4( vec3( mix( 0.2, 0.8, uv.y ) ), 1.0 );
	#endif
	vec3 outgoingLight = diffuseColor.rgb * matcapColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,vb=`#define NORMAL
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	vViewPosition = - mvPosition.xyz;
#endif
}`,yb=`#define NORMAL
uniform float opacity;
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <uv_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 0.0, 0.0, 0.0, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	gl_FragColor = vec4( normalize( normal ) * 0.5 + 0.5, diffuseColor.a );
	#ifdef OPAQUE
		gl_FragColor.a = 1.0;
	#endif
}`,xb=`#define PHONG
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,bb=`#define PHONG
uniform vec3 diffuse;
uniform vec3 emissive;
uniform vec3 specular;
uniform float shininess;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_phong_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_phong_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + reflectedLight.directSpecular + reflectedLight.indirectSpecular + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,Mb=`#define STANDARD
varying vec3 vViewPosition;
#ifdef USE_TRANSMISSION
	varying vec3 vWorldPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
#ifdef USE_TRANSMISSION
	vWorldPosition = worldPosition.xyz;
#endif
}`,Sb=`#define STANDARD
#ifdef PHYSICAL
	#define IOR
	#define USE_SPECULAR
#endif
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float roughness;
uniform float metalness;
uniform float opacity;
#ifdef IOR
	uniform float ior;
#endif
#ifdef USE_SPECULAR
	uniform float specularIntensity;
	uniform vec3 specularColor;
	#ifdef USE_SPECULAR_COLORMAP
		uniform sampler2D specularColorMap;
	#endif
	#ifdef USE_SPECULAR_INTENSITYMAP
		uniform sampler2D specularIntensityMap;
	#endif
#endif
#ifdef USE_CLEARCOAT
	uniform float clearcoat;
	uniform float clearcoatRoughness;
#endif
#ifdef USE_DIFFUSE_ROUGHNESS
	uniform float diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		uniform sampler2D diffuseRoughnessMap;
	#endif
#endif
#ifdef USE_DISPERSION
	uniform float dispersion;
#endif
#ifdef USE_RETROREFLECTION
	uniform float retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	uniform float iridescence;
	uniform float iridescenceIOR;
	uniform float iridescenceThicknessMinimum;
	uniform float iridescenceThicknessMaximum;
#endif
#ifdef USE_SHEEN
	uniform vec3 sheenColor;
	uniform float sheenRoughness;
	#ifdef USE_SHEEN_COLORMAP
		uniform sampler2D sheenColorMap;
	#endif
	#ifdef USE_SHEEN_ROUGHNESSMAP
		uniform sampler2D sheenRoughnessMap;
	#endif
#endif
#ifdef USE_ANISOTROPY
	uniform vec2 anisotropyVector;
	#ifdef USE_ANISOTROPYMAP
		uniform sampler2D anisotropyMap;
	#endif
#endif
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <iridescence_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_physical_pars_fragment>
#include <transmission_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <clearcoat_pars_fragment>
#include <iridescence_pars_fragment>
#include <roughnessmap_pars_fragment>
#include <metalnessmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <roughnessmap_fragment>
	#include <metalnessmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <clearcoat_normal_fragment_begin>
	#include <clearcoat_normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_physical_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 totalDiffuse = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse;
	vec3 totalSpecular = reflectedLight.directSpecular + reflectedLight.indirectSpecular;
	#include <transmission_fragment>
	vec3 outgoingLight = totalDiffuse + totalSpecular + totalEmissiveRadiance;
	#ifdef USE_SHEEN
 
		outgoingLight = outgoingLight + sheenSpecularDirect + sheenSpecularIndirect;
 
 	#endif
	#ifdef USE_CLEARCOAT
		float dotNVcc = saturate( dot( geometryClearcoatNormal, geometryViewDir ) );
		vec3 Fcc = F_Schlick( material.clearcoatF0, material.clearcoatF90, dotNVcc );
		outgoingLight = outgoingLight * ( 1.0 - material.clearcoat * Fcc ) + ( clearcoatSpecularDirect + clearcoatSpecularIndirect ) * material.clearcoat;
	#endif
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,wb=`#define TOON
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,Tb=`#define TOON
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <gradientmap_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_toon_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_toon_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,Ab=`uniform float size;
uniform float scale;
#include <common>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
#ifdef USE_POINTS_UV
	varying vec2 vUv;
	uniform mat3 uvTransform;
#endif
void main() {
	#ifdef USE_POINTS_UV
		vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	#endif
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	gl_PointSize = size;
	#ifdef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) gl_PointSize *= ( scale / - mvPosition.z );
	#endif
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <fog_vertex>
}`,Eb=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <color_pars_fragment>
#include <map_particle_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_particle_fragment>
	#include <color_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,Cb=`#include <common>
#include <batching_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <shadowmap_pars_vertex>
void main() {
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,Rb=`uniform vec3 color;
uniform float opacity;
#include <common>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <logdepthbuf_pars_fragment>
#include <shadowmap_pars_fragment>
#include <shadowmask_pars_fragment>
void main() {
	#include <logdepthbuf_fragment>
	gl_FragColor = vec4( color, opacity * ( 1.0 - getShadowMask() ) );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,Pb=`uniform float rotation;
uniform vec2 center;
#include <common>
#include <uv_pars_vertex>
#include <fog_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	vec4 mvPosition = modelViewMatrix[ 3 ];
	vec2 scale = vec2( length( modelMatrix[ 0 ].xyz ), length( modelMatrix[ 1 ].xyz ) );
	#ifndef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) scale *= - mvPosition.z;
	#endif
	vec2 alignedPosition = ( position.xy - ( center - vec2( 0.5 ) ) ) * scale;
	vec2 rotatedPosition;
	rotatedPosition.x = cos( rotation ) * alignedPosition.x - sin( rotation ) * alignedPosition.y;
	rotatedPosition.y = sin( rotation ) * alignedPosition.x + cos( rotation ) * alignedPosition.y;
	mvPosition.xy += rotatedPosition;
	gl_Position = projectionMatrix * mvPosition;
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,Ib=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
}`,Ht={alphahash_fragment:Qv,alphahash_pars_fragment:ty,alphamap_fragment:ey,alphamap_pars_fragment:ny,alphatest_fragment:iy,alphatest_pars_fragment:sy,aomap_fragment:ry,aomap_pars_fragment:oy,batching_pars_vertex:ay,batching_vertex:ly,begin_vertex:cy,beginnormal_vertex:uy,bsdfs:hy,iridescence_fragment:fy,bumpmap_pars_fragment:dy,clipping_planes_fragment:py,clipping_planes_pars_fragment:my,clipping_planes_pars_vertex:gy,clipping_planes_vertex:_y,color_fragment:vy,color_pars_fragment:yy,color_pars_vertex:xy,color_vertex:by,common:My,defaultnormal_vertex:Sy,displacementmap_pars_vertex:wy,displacementmap_vertex:Ty,emissivemap_fragment:Ay,emissivemap_pars_fragment:Ey,colorspace_fragment:Cy,colorspace_pars_fragment:Ry,envmap_fragment:Py,envmap_common_pars_fragment:Iy,envmap_pars_fragment:Dy,envmap_pars_vertex:Ly,envmap_physical_pars_fragment:Wy,envmap_vertex:Ny,fog_vertex:Uy,fog_pars_vertex:Fy,fog_fragment:Oy,fog_pars_fragment:By,gradientmap_pars_fragment:ky,lightmap_pars_fragment:zy,lights_lambert_fragment:Vy,lights_lambert_pars_fragment:Gy,lights_pars_begin:Hy,lights_toon_fragment:Xy,lights_toon_pars_fragment:qy,lights_phong_fragment:Yy,lights_phong_pars_fragment:$y,lights_physical_fragment:Zy,lights_physical_pars_fragment:Jy,lights_fragment_begin:Ky,lights_fragment_maps:jy,lights_fragment_end:Qy,lightprobes_pars_fragment:tx,logdepthbuf_fragment:ex,logdepthbuf_pars_fragment:nx,logdepthbuf_pars_vertex:ix,logdepthbuf_vertex:sx,map_fragment:rx,map_pars_fragment:ox,map_particle_fragment:ax,map_particle_pars_fragment:lx,metalnessmap_fragment:cx,metalnessmap_pars_fragment:ux,morphinstance_vertex:hx,morphcolor_vertex:fx,morphnormal_vertex:dx,morphtarget_pars_vertex:px,morphtarget_vertex:mx,normal_fragment_begin:gx,normal_fragment_maps:_x,normal_pars_fragment:vx,normal_pars_vertex:yx,normal_vertex:xx,normalmap_pars_fragment:bx,clearcoat_normal_fragment_begin:Mx,clearcoat_normal_fragment_maps:Sx,clearcoat_pars_fragment:wx,iridescence_pars_fragment:Tx,opaque_fragment:Ax,packing:Ex,premultiplied_alpha_fragment:Cx,project_vertex:Rx,dithering_fragment:Px,dithering_pars_fragment:Ix,roughnessmap_fragment:Dx,roughnessmap_pars_fragment:Lx,shadowmap_pars_fragment:Nx,shadowmap_pars_vertex:Ux,shadowmap_vertex:Fx,shadowmask_pars_fragment:Ox,skinbase_vertex:Bx,skinning_pars_vertex:kx,skinning_vertex:zx,skinnormal_vertex:Vx,specularmap_fragment:Gx,specularmap_pars_fragment:Hx,tonemapping_fragment:Wx,tonemapping_pars_fragment:Xx,transmission_fragment:qx,transmission_pars_fragment:Yx,uv_pars_fragment:$x,uv_pars_vertex:Zx,uv_vertex:Jx,worldpos_vertex:Kx,background_vert:jx,background_frag:Qx,backgroundCube_vert:tb,backgroundCube_frag:eb,cube_vert:nb,cube_frag:ib,depth_vert:sb,depth_frag:rb,distance_vert:ob,distance_frag:ab,equirect_vert:lb,equirect_frag:cb,linedashed_vert:ub,linedashed_frag:hb,meshbasic_vert:fb,meshbasic_frag:db,meshlambert_vert:pb,meshlambert_frag:mb,meshmatcap_vert:gb,meshmatcap_frag:_b,meshnormal_vert:vb,meshnormal_frag:yb,meshphong_vert:xb,meshphong_frag:bb,meshphysical_vert:Mb,meshphysical_frag:Sb,meshtoon_vert:wb,meshtoon_frag:Tb,points_vert:Ab,points_frag:Eb,shadow_vert:Cb,shadow_frag:Rb,sprite_vert:Pb,sprite_frag:Ib},_t={common:{diffuse:{value:new kt(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new Ft},alphaMap:{value:null},alphaMapTransform:{value:new Ft},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new Ft}},envmap:{envMap:{value:null},envMapRotation:{value:new Ft},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98},dfgLUT:{value:null}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new Ft}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new Ft}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new Ft},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new Ft},normalScale:{value:new rt(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new Ft},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new Ft}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new Ft}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new Ft}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new kt(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},sunLights:{value:[],properties:{direction:{},color:{}}},sunLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},sunShadowMatrix:{value:[]},sunShadowCascade:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null},probesSH:{value:[]},probesMin:{value:[]},probesMax:{value:[]},probesResolution:{value:[]}},points:{diffuse:{value:new kt(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new Ft},alphaTest:{value:0},uvTransform:{value:new Ft}},sprite:{diffuse:{value:new kt(16777215)},opacity:{value:1},center:{value:new rt(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new Ft},alphaMap:{value:null},alphaMapTransform:{value:new Ft},alphaTest:{value:0}}},fi={basic:{uniforms:an([_t.common,_t.specularmap,_t.envmap,_t.aomap,_t.lightmap,_t.fog]),vertexShader:Ht.meshbasic_vert,fragmentShader:Ht.meshbasic_frag},lambert:{uniforms:an([_t.common,_t.specularmap,_t.envmap,_t.aomap,_t.lightmap,_t.emissivemap,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.fog,_t.lights,{emissive:{value:new kt(0)},envMapIntensity:{value:1}}]),vertexShader:Ht.meshlambert_vert,fragmentShader:Ht.meshlambert_frag},phong:{uniforms:an([_t.common,_t.specularmap,_t.envmap,_t.aomap,_t.lightmap,_t.emissivemap,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.fog,_t.lights,{emissive:{value:new kt(0)},specular:{value:new kt(1118481)},shininess:{value:30},envMapIntensity:{value:1}}]),vertexShader:Ht.meshphong_vert,fragmentShader:Ht.meshphong_frag},standard:{uniforms:an([_t.common,_t.envmap,_t.aomap,_t.lightmap,_t.emissivemap,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.roughnessmap,_t.metalnessmap,_t.fog,_t.lights,{emissive:{value:new kt(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:Ht.meshphysical_vert,fragmentShader:Ht.meshphysical_frag},toon:{uniforms:an([_t.common,_t.aomap,_t.lightmap,_t.emissivemap,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.gradientmap,_t.fog,_t.lights,{emissive:{value:new kt(0)}}]),vertexShader:Ht.meshtoon_vert,fragmentShader:Ht.meshtoon_frag},matcap:{uniforms:an([_t.common,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.fog,{matcap:{value:null}}]),vertexShader:Ht.meshmatcap_vert,fragmentShader:Ht.meshmatcap_frag},points:{uniforms:an([_t.points,_t.fog]),vertexShader:Ht.points_vert,fragmentShader:Ht.points_frag},dashed:{uniforms:an([_t.common,_t.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:Ht.linedashed_vert,fragmentShader:Ht.linedashed_frag},depth:{uniforms:an([_t.common,_t.displacementmap]),vertexShader:Ht.depth_vert,fragmentShader:Ht.depth_frag},normal:{uniforms:an([_t.common,_t.bumpmap,_t.normalmap,_t.displacementmap,{opacity:{value:1}}]),vertexShader:Ht.meshnormal_vert,fragmentShader:Ht.meshnormal_frag},sprite:{uniforms:an([_t.sprite,_t.fog]),vertexShader:Ht.sprite_vert,fragmentShader:Ht.sprite_frag},background:{uniforms:{uvTransform:{value:new Ft},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:Ht.background_vert,fragmentShader:Ht.background_frag},backgroundCube:{uniforms:{envMap:{value:null},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new Ft}},vertexShader:Ht.backgroundCube_vert,fragmentShader:Ht.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:Ht.cube_vert,fragmentShader:Ht.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:Ht.equirect_vert,fragmentShader:Ht.equirect_frag},distance:{uniforms:an([_t.common,_t.displacementmap,{referencePosition:{value:new N},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:Ht.distance_vert,fragmentShader:Ht.distance_frag},shadow:{uniforms:an([_t.lights,_t.fog,{color:{value:new kt(0)},opacity:{value:1}}]),vertexShader:Ht.shadow_vert,fragmentShader:Ht.shadow_frag}};fi.physical={uniforms:an([fi.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new Ft},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new Ft},clearcoatNormalScale:{value:new rt(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new Ft},diffuseRoughness:{value:0},diffuseRoughnessMap:{value:null},diffuseRoughnessMapTransform:{value:new Ft},dispersion:{value:0},retroreflectivity:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new Ft},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new Ft},sheen:{value:0},sheenColor:{value:new kt(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new Ft},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new Ft},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new Ft},transmissionSamplerSize:{value:new rt},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new Ft},attenuationDistance:{value:0},attenuationColor:{value:new kt(0)},specularColor:{value:new kt(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new Ft},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new Ft},anisotropyVector:{value:new rt},anisotropyMap:{value:null},anisotropyMapTransform:{value:new Ft}}]),vertexShader:Ht.meshphysical_vert,fragmentShader:Ht.meshphysical_frag};var $c={r:0,b:0,g:0},Db=new Qt,mg=new Ft;mg.set(-1,0,0,0,1,0,0,0,1);function Lb(n,t,e,i,s,r){let o=new kt(0),a=s===!0?0:1,l,c,u=null,f=0,d=null;function h(v){let M=v.isScene===!0?v.background:null;if(M&&M.isTexture){let b=v.backgroundBlurriness>0;M=t.get(M,b)}return M}function m(v){let M=!1,b=h(v);b===null?g(o,a):b&&b.isColor&&(g(b,1),M=!0);let E=n.xr.getEnvironmentBlendMode();E==="additive"?e.buffers.color.setClear(0,0,0,1,r):E==="alpha-blend"&&e.buffers.color.setClear(0,0,0,0,r),(n.autoClear||M)&&(e.buffers.depth.setTest(!0),e.buffers.depth.setMask(!0),e.buffers.color.setMask(!0),n.clear(n.autoClearColor,n.autoClearDepth,n.autoClearStencil))}function y(v,M){let b=h(M);b&&b.isCubeTexture?(c===void 0&&(c=new Re(new mn(1,1,1),new Cn({name:"BackgroundCubeMaterial",uniforms:Rs(fi.backgroundCube.uniforms),vertexShader:fi.backgroundCube.vertexShader,fragmentShader:fi.backgroundCube.fragmentShader,side:fn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),c.geometry.deleteAttribute("uv"),c.onBeforeRender=function(E,A,x){this.matrixWorld.copyPosition(x.matrixWorld)},Object.defineProperty(c.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),i.update(c)),c.material.uniforms.envMap.value=b,c.material.uniforms.backgroundBlurriness.value=M.backgroundBlurriness,c.material.uniforms.backgroundIntensity.value=M.backgroundIntensity,c.material.uniforms.backgroundRotation.value.setFromMatrix4(Db.makeRotationFromEuler(M.backgroundRotation)).transpose(),b.isRenderTargetTexture===!1&&c.material.uniforms.backgroundRotation.value.premultiply(mg),c.material.toneMapped=Jt.getTransfer(b.colorSpace)!==ae,(u!==b||f!==b.version||d!==n.toneMapping)&&(c.material.needsUpdate=!0,u=b,f=b.version,d=n.toneMapping),c.layers.enableAll(),v.unshift(c,c.geometry,c.material,0,0,null)):b&&b.isTexture&&(l===void 0&&(l=new Re(new zo(2,2),new Cn({name:"BackgroundMaterial",uniforms:Rs(fi.background.uniforms),vertexShader:fi.background.vertexShader,fragmentShader:fi.background.fragmentShader,side:Qi,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),Object.defineProperty(l.material,"map",{get:function(){return this.uniforms.t2D.value}}),i.update(l)),l.material.uniforms.t2D.value=b,l.material.uniforms.backgroundIntensity.value=M.backgroundIntensity,l.material.toneMapped=Jt.getTransfer(b.colorSpace)!==ae,b.matrixAutoUpdate===!0&&b.updateMatrix(),l.material.uniforms.uvTransform.value.copy(b.matrix),(u!==b||f!==b.version||d!==n.toneMapping)&&(l.material.needsUpdate=!0,u=b,f=b.version,d=n.toneMapping),l.layers.enableAll(),v.unshift(l,l.geometry,l.material,0,0,null))}function g(v,M){v.getRGB($c,lf(n)),e.buffers.color.setClear($c.r,$c.g,$c.b,M,r)}function p(){c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0),l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0)}return{getClearColor:function(){return o},setClearColor:function(v,M=1){o.set(v),a=M,g(o,a)},getClearAlpha:function(){return a},setClearAlpha:function(v){a=v,g(o,a)},render:m,addToRenderList:y,dispose:p}}function Nb(n,t){let e=n.getParameter(n.MAX_VERTEX_ATTRIBS),i={},s=d(null),r=s,o=!1;function a(P,F,k,I,W){let X=!1,B=f(P,I,k,F);r!==B&&(r=B,c(r.object)),X=h(P,I,k,W),X&&m(P,I,k,W),W!==null&&t.update(W,n.ELEMENT_ARRAY_BUFFER),(X||o)&&(o=!1,b(P,F,k,I),W!==null&&n.bindBuffer(n.ELEMENT_ARRAY_BUFFER,t.get(W).buffer))}function l(){return n.createVertexArray()}function c(P){return n.bindVertexArray(P)}function u(P){return n.deleteVertexArray(P)}function f(P,F,k,I){let W=I.wireframe===!0,X=i[F.id];X===void 0&&(X={},i[F.id]=X);let B=P.isInstancedMesh===!0?P.id:0,Q=X[B];Q===void 0&&(Q={},X[B]=Q);let G=Q[k.id];G===void 0&&(G={},Q[k.id]=G);let tt=G[W];return tt===void 0&&(tt=d(l()),G[W]=tt),tt}function d(P){let F=[],k=[],I=[];for(let W=0;W<e;W++)F[W]=0,k[W]=0,I[W]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:F,enabledAttributes:k,attributeDivisors:I,object:P,attributes:{},index:null}}function h(P,F,k,I){let W=r.attributes,X=F.attributes,B=0,Q=k.getAttributes();for(let G in Q)if(Q[G].location>=0){let et=W[G],xt=X[G];if(xt===void 0&&(G==="instanceMatrix"&&P.instanceMatrix&&(xt=P.instanceMatrix),G==="instanceColor"&&P.instanceColor&&(xt=P.instanceColor)),et===void 0||et.attribute!==xt||xt&&et.data!==xt.data)return!0;B++}return r.attributesNum!==B||r.index!==I}function m(P,F,k,I){let W={},X=F.attributes,B=0,Q=k.getAttributes();for(let G in Q)if(Q[G].location>=0){let et=X[G];et===void 0&&(G==="instanceMatrix"&&P.instanceMatrix&&(et=P.instanceMatrix),G==="instanceColor"&&P.instanceColor&&(et=P.instanceColor));let xt={};xt.attribute=et,et&&et.data&&(xt.data=et.data),W[G]=xt,B++}r.attributes=W,r.attributesNum=B,r.index=I}function y(){let P=r.newAttributes;for(let F=0,k=P.length;F<k;F++)P[F]=0}function g(P){p(P,0)}function p(P,F){let k=r.newAttributes,I=r.enabledAttributes,W=r.attributeDivisors;k[P]=1,I[P]===0&&(n.enableVertexAttribArray(P),I[P]=1),W[P]!==F&&(n.vertexAttribDivisor(P,F),W[P]=F)}function v(){let P=r.newAttributes,F=r.enabledAttributes;for(let k=0,I=F.length;k<I;k++)F[k]!==P[k]&&(n.disableVertexAttribArray(k),F[k]=0)}function M(P,F,k,I,W,X,B){B===!0?n.vertexAttribIPointer(P,F,k,W,X):n.vertexAttribPointer(P,F,k,I,W,X)}function b(P,F,k,I){y();let W=I.attributes,X=k.getAttributes(),B=F.defaultAttributeValues;for(let Q in X){let G=X[Q];if(G.location>=0){let tt=W[Q];if(tt===void 0&&(Q==="instanceMatrix"&&P.instanceMatrix&&(tt=P.instanceMatrix),Q==="instanceColor"&&P.instanceColor&&(tt=P.instanceColor)),tt!==void 0){let et=tt.normalized,xt=tt.itemSize,Dt=t.get(tt);if(Dt===void 0)continue;let Z=Dt.buffer,dt=Dt.type,yt=Dt.bytesPerElement,Et=dt===n.INT||dt===n.UNSIGNED_INT||tt.gpuType===cc;if(tt.isInterleavedBufferAttribute){let mt=tt.data,Ut=mt.isInterleavedBuffer===!0?mt.stride:mt.itemSize,Ee=tt.offset;if(mt.isInstancedInterleavedBuffer||mt.isInstancedBufferAttribute){for(let Pt=0;Pt<G.locationSize;Pt++)p(G.location+Pt,mt.meshPerAttribute);P.isInstancedMesh!==!0&&I._maxInstanceCount===void 0&&(I._maxInstanceCount=mt.meshPerAttribute*mt.count)}else for(let Pt=0;Pt<G.locationSize;Pt++)g(G.location+Pt);n.bindBuffer(n.ARRAY_BUFFER,Z);for(let Pt=0;Pt<G.locationSize;Pt++)M(G.location+Pt,xt/G.locationSize,dt,et,Ut*yt,(Ee+xt/G.locationSize*Pt)*yt,Et)}else{if(tt.isInstancedBufferAttribute){for(let mt=0;mt<G.locationSize;mt++)p(G.location+mt,tt.meshPerAttribute);P.isInstancedMesh!==!0&&I._maxInstanceCount===void 0&&(I._maxInstanceCount=tt.meshPerAttribute*tt.count)}else for(let mt=0;mt<G.locationSize;mt++)g(G.location+mt);n.bindBuffer(n.ARRAY_BUFFER,Z);for(let mt=0;mt<G.locationSize;mt++)M(G.location+mt,xt/G.locationSize,dt,et,xt*yt,xt/G.locationSize*mt*yt,Et)}}else if(B!==void 0){let et=B[Q];if(et!==void 0)switch(et.length){case 2:n.vertexAttrib2fv(G.location,et);break;case 3:n.vertexAttrib3fv(G.location,et);break;case 4:n.vertexAttrib4fv(G.location,et);break;default:n.vertexAttrib1fv(G.location,et)}}}}v()}function E(){D();for(let P in i){let F=i[P];for(let k in F){let I=F[k];for(let W in I){let X=I[W];for(let B in X)u(X[B].object),delete X[B];delete I[W]}}delete i[P]}}function A(P){if(i[P.id]===void 0)return;let F=i[P.id];for(let k in F){let I=F[k];for(let W in I){let X=I[W];for(let B in X)u(X[B].object),delete X[B];delete I[W]}}delete i[P.id]}function x(P){for(let F in i){let k=i[F];for(let I in k){let W=k[I];if(W[P.id]===void 0)continue;let X=W[P.id];for(let B in X)u(X[B].object),delete X[B];delete W[P.id]}}}function T(P){for(let F in i){let k=i[F],I=P.isInstancedMesh===!0?P.id:0,W=k[I];if(W!==void 0){for(let X in W){let B=W[X];for(let Q in B)u(B[Q].object),delete B[Q];delete W[X]}delete k[I],Object.keys(k).length===0&&delete i[F]}}}function D(){R(),o=!0,r!==s&&(r=s,c(r.object))}function R(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:a,reset:D,resetDefaultState:R,dispose:E,releaseStatesOfGeometry:A,releaseStatesOfObject:T,releaseStatesOfProgram:x,initAttributes:y,enableAttribute:g,disableUnusedAttributes:v}}function Ub(n,t,e){let i;function s(l){i=l}function r(l,c){n.drawArrays(i,l,c),e.update(c,i,1)}function o(l,c,u){u!==0&&(n.drawArraysInstanced(i,l,c,u),e.update(c,i,u))}function a(l,c,u){if(u===0)return;t.get("WEBGL_multi_draw").multiDrawArraysWEBGL(i,l,0,c,0,u);let d=0;for(let h=0;h<u;h++)d+=c[h];e.update(d,i,1)}this.setMode=s,this.render=r,this.renderInstances=o,this.renderMultiDraw=a}function Fb(n,t,e,i){let s;function r(){if(s!==void 0)return s;if(t.has("EXT_texture_filter_anisotropic")===!0){let x=t.get("EXT_texture_filter_anisotropic");s=n.getParameter(x.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function o(x){return!(x!==jn&&i.convert(x)!==n.getParameter(n.IMPLEMENTATION_COLOR_READ_FORMAT))}function a(x){let T=x===Kn&&(t.has("EXT_color_buffer_half_float")||t.has("EXT_color_buffer_float"));return!(x!==gn&&x!==kn&&!T&&i.convert(x)!==n.getParameter(n.IMPLEMENTATION_COLOR_READ_TYPE))}function l(x){if(x==="highp"){if(n.getShaderPrecisionFormat(n.VERTEX_SHADER,n.HIGH_FLOAT).precision>0&&n.getShaderPrecisionFormat(n.FRAGMENT_SHADER,n.HIGH_FLOAT).precision>0)return"highp";x="mediump"}return x==="mediump"&&n.getShaderPrecisionFormat(n.VERTEX_SHADER,n.MEDIUM_FLOAT).precision>0&&n.getShaderPrecisionFormat(n.FRAGMENT_SHADER,n.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let c=e.precision!==void 0?e.precision:"highp",u=l(c);u!==c&&(Rt("WebGLRenderer:",c,"not supported, using",u,"instead."),c=u);let f=e.reversedDepthBuffer===!0&&t.has("EXT_clip_control"),d=e.logarithmicDepthBuffer===!0&&f===!1;e.reversedDepthBuffer===!0&&f===!1&&Rt("WebGLRenderer: Unable to use reversed depth buffer due to missing EXT_clip_control extension. Fallback to default depth buffer."),e.logarithmicDepthBuffer===!0&&f===!0&&Rt("WebGLRenderer: Logarithmic depth buffer is ignored when reversed depth buffer is enabled.");let h=n.getParameter(n.MAX_TEXTURE_IMAGE_UNITS),m=n.getParameter(n.MAX_VERTEX_TEXTURE_IMAGE_UNITS),y=n.getParameter(n.MAX_TEXTURE_SIZE),g=n.getParameter(n.MAX_CUBE_MAP_TEXTURE_SIZE),p=n.getParameter(n.MAX_VERTEX_ATTRIBS),v=n.getParameter(n.MAX_VERTEX_UNIFORM_VECTORS),M=n.getParameter(n.MAX_VARYING_VECTORS),b=n.getParameter(n.MAX_FRAGMENT_UNIFORM_VECTORS),E=n.getParameter(n.MAX_SAMPLES),A=n.getParameter(n.SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:o,textureTypeReadable:a,precision:c,logarithmicDepthBuffer:d,reversedDepthBuffer:f,maxTextures:h,maxVertexTextures:m,maxTextureSize:y,maxCubemapSize:g,maxAttributes:p,maxVertexUniforms:v,maxVaryings:M,maxFragmentUniforms:b,maxSamples:E,samples:A}}function Ob(n){let t=this,e=null,i=0,s=!1,r=!1,o=new Tn,a=new Ft,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(f,d){let h=f.length!==0||d||i!==0||s;return s=d,i=f.length,h},this.beginShadows=function(){r=!0,u(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(f,d){e=u(f,d,0)},this.setState=function(f,d,h){let m=f.clippingPlanes,y=f.clipIntersection,g=f.clipShadows,p=n.get(f);if(!s||m===null||m.length===0||r&&!g)r?u(null):c();else{let v=r?0:i,M=v*4,b=p.clippingState||null;l.value=b,b=u(m,d,M,h);for(let E=0;E!==M;++E)b[E]=e[E];p.clippingState=b,this.numIntersection=y?this.numPlanes:0,this.numPlanes+=v}};function c(){l.value!==e&&(l.value=e,l.needsUpdate=i>0),t.numPlanes=i,t.numIntersection=0}function u(f,d,h,m){let y=f!==null?f.length:0,g=null;if(y!==0){if(g=l.value,m!==!0||g===null){let p=h+y*4,v=d.matrixWorldInverse;a.getNormalMatrix(v),(g===null||g.length<p)&&(g=new Float32Array(p));for(let M=0,b=h;M!==y;++M,b+=4)o.copy(f[M]).applyMatrix4(v,a),o.normal.toArray(g,b),g[b+3]=o.constant}l.value=g,l.needsUpdate=!0}return t.numPlanes=y,t.numIntersection=0,g}}var ra=class extends An{constructor(t=1,e={}){super(t,t,e),this.isWebGLCubeRenderTarget=!0;let i={width:t,height:t,depth:1},s=[i,i,i,i,i,i];this.texture=new Co(s),this._setTextureOptions(e),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(t,e){this.texture.type=e.type,this.texture.colorSpace=e.colorSpace,this.texture.generateMipmaps=e.generateMipmaps,this.texture.minFilter=e.minFilter,this.texture.magFilter=e.magFilter;let i={uniforms:{tEquirect:{value:null}},vertexShader:`

				varying vec3 vWorldDirection;

				vec3 transformDirection( in vec3 dir, in mat4 matrix ) {

					return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );

				}

				void main() {

					vWorldDirection = transformDirection( position, modelMatrix );

					#include <begin_vertex>
					#include <project_vertex>

				}
			`,fragmentShader:`

				uniform sampler2D tEquirect;

				varying vec3 vWorldDirection;

				#include <common>

				void main() {

					vec3 direction = normalize( vWorldDirection );

					vec2 sampleUV = equirectUv( direction );

					gl_FragColor = texture2D( tEquirect, sampleUV );

				}
			`},s=new mn(5,5,5),r=new Cn({name:"CubemapFromEquirect",uniforms:Rs(i.uniforms),vertexShader:i.vertexShader,fragmentShader:i.fragmentShader,side:fn,blending:ws});r.uniforms.tEquirect.value=e;let o=new Re(s,r),a=e.minFilter;return e.minFilter===Ci&&(e.minFilter=hn),new Mr(1,10,this).update(t,o),e.minFilter=a,o.geometry.dispose(),o.material.dispose(),this}clear(t,e=!0,i=!0,s=!0){let r=t.getRenderTarget();for(let o=0;o<6;o++)t.setRenderTarget(this,o),t.clear(e,i,s);t.setRenderTarget(r)}},Ym=256,Bb=3,kb=20,gg=256,_g=16,zb=3,Vb=new N,Gb=new kt,Jc=class n{constructor(t){this._renderer=t,this._cubeSize=0,this._sourceTarget=null,this._cubeCamera=new Mr(1,10,null),this._boxMesh=new Re(new mn(5,5,5),null),this._cubemapMaterial=null,this._equirectMaterial=null,this._blurMaterial=null,this._ggxMaterial=null,this._integrationMaterial=null}fromScene(t,e=0,i=.1,s=100,r={}){let{size:o=256,position:a=Vb}=r,l=this._renderer;this._setSize(o);let c=this._allocateTarget(),u=this._getSourceTarget(!0);e>0&&(u.texture.mipmapsAutoUpdate=!1);let f=l.autoClear,d=l.autoClearColor,h=l.autoClearDepth,m=l.autoClearStencil,y=t.background;l.autoClear=!0,l.autoClearColor=!0,l.autoClearDepth=!0,l.autoClearStencil=!0,y===null&&(t.background=l.getClearColor(Gb));let g=new Mr(i,s,u);return g.position.copy(a),g.update(l,t),l.autoClear=f,l.autoClearColor=d,l.autoClearDepth=h,l.autoClearStencil=m,t.background=y,e>0&&(u.texture.mipmapsAutoUpdate=!0,this._blur(c,e)),this._applyPMREM(c),c}fromEquirectangular(t,e=null){return this._fromTexture(t,e)}fromCubemap(t,e=null){return this._fromTexture(t,e)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=Jm(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=Zm(),this._compileMaterial(this._equirectMaterial))}dispose(){this._sourceTarget!==null&&this._sourceTarget.dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose(),this._blurMaterial!==null&&this._blurMaterial.dispose(),this._ggxMaterial!==null&&this._ggxMaterial.dispose(),this._integrationMaterial!==null&&this._integrationMaterial.dispose(),this._boxMesh.geometry.dispose()}static lodToRoughness(t,e){return e>0?1-Math.sqrt(1-t/e):0}_setSize(t){this._cubeSize=Math.max(Ym,rf(t))}_fromTexture(t,e){t.mapping===As||t.mapping===Ar?this._setSize(t.image.length===0?Ym:t.image[0].width||t.image[0].image.width):this._setSize(t.image.width/4);let i=e||this._allocateTarget();return this._textureToCubemap(t),this._applyPMREM(i),i}_allocateTarget(){let t=this._cubeSize,e=$m(t,!1,!1),i=Math.log2(t)-Bb;for(let s=0;s<=i;s++)e.texture.mipmaps.push({width:t>>s,height:t>>s});return e.texture.name="PMREM",e.texture.isPMREMTexture=!0,e}_getSourceTarget(t=!1){let e=this._cubeSize,i=this._sourceTarget;return(i===null||i.width!==e||t&&i.depthBuffer===!1)&&(i!==null&&i.dispose(),this._sourceTarget=$m(e,!0,t)),this._sourceTarget}_compileMaterial(t){this._boxMesh.material=t,this._renderer.compile(this._boxMesh,this._cubeCamera.children[0])}_renderCube(t,e,i){let s=this._boxMesh,r=this._cubeCamera;s.material=i,r.renderTarget=t,r.activeMipmapLevel=e;let o=t.width>>e;t.viewport.set(0,0,o,o),r.update(this._renderer,s),t.viewport.set(0,0,t.width,t.height)}_textureToCubemap(t){let e;t.mapping===As||t.mapping===Ar?(this._cubemapMaterial===null&&(this._cubemapMaterial=Jm()),e=this._cubemapMaterial,e.uniforms.flipEnvMap.value=t.isRenderTargetTexture===!1?-1:1):(this._equirectMaterial===null&&(this._equirectMaterial=Zm()),e=this._equirectMaterial),e.uniforms.envMap.value=t,this._renderCube(this._getSourceTarget(),0,e)}_applyPMREM(t){this._ggxMaterial===null&&(this._ggxMaterial=Hb(),this._integrationMaterial=Wb());let e=this._cubeSize,i=t.texture.mipmaps.length-1,s=this._ggxMaterial.uniforms;s.envMap.value=this._sourceTarget.texture;let r=this._integrationMaterial.uniforms;r.envMap.value=this._sourceTarget.texture,r.sourceLod.value=Math.log2(e/_g);for(let o=0;o<=i;o++){let a=n.lodToRoughness(o,i);if(o>i-zb)r.roughness.value=a,this._renderCube(t,o,this._integrationMaterial);else{let l=a>0?Math.log2(e)+.5*Math.log2(6/(gg*Math.pow(a,4)))+.5:0;s.roughness.value=a,s.lodBias.value=l,this._renderCube(t,o,this._ggxMaterial)}}}_blur(t,e){this._blurMaterial===null&&(this._blurMaterial=Xb());let i=this._blurMaterial,s=i.uniforms,r=this._sourceTarget;s.sigma.value=Math.min(e,Math.PI)/Math.SQRT2,s.envMap.value=r.texture,this._renderCube(t,0,i),s.envMap.value=t.texture,this._renderCube(r,0,i)}};function $m(n,t,e){return new ra(n,{minFilter:Ci,generateMipmaps:t,type:Kn,colorSpace:_o,depthBuffer:e})}function oa(n,t,e){return new Cn({name:n,uniforms:t,vertexShader:Ht.cube_vert,fragmentShader:e,side:fn,blending:ws,depthTest:!1,depthWrite:!1})}function Hb(){return oa("PMREMGGXConvolution",{envMap:{value:null},roughness:{value:0},lodBias:{value:0}},`

		#define GGX_SAMPLES ${gg}u

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float lodBias;

		#include <common>

		// Van der Corput radical inverse
		float radicalInverse_VdC( uint bits ) {

			bits = ( bits << 16u ) | ( bits >> 16u );
			bits = ( ( bits & 0x55555555u ) << 1u ) | ( ( bits & 0xAAAAAAAAu ) >> 1u );
			bits = ( ( bits & 0x33333333u ) << 2u ) | ( ( bits & 0xCCCCCCCCu ) >> 2u );
			bits = ( ( bits & 0x0F0F0F0Fu ) << 4u ) | ( ( bits & 0xF0F0F0F0u ) >> 4u );
			bits = ( ( bits & 0x00FF00FFu ) << 8u ) | ( ( bits & 0xFF00FF00u ) >> 8u );
			return float( bits ) * 2.3283064365386963e-10; // / 0x100000000

		}

		// Hammersley sequence
		vec2 hammersley( uint i, uint N ) {

			return vec2( float( i ) / float( N ), radicalInverse_VdC( i ) );

		}

		void main() {

			vec3 N = normalize( vWorldDirection );

			// For very low roughness, just sample the environment directly
			if ( roughness < 0.001 ) {

				gl_FragColor = vec4( textureLod( envMap, N, 0.0 ).rgb, 1.0 );
				return;

			}

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			// Tangent space basis for VNDF sampling
			vec3 up = abs( N.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, N ) );
			vec3 bitangent = cross( N, tangent );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			for ( uint i = 0u; i < GGX_SAMPLES; i ++ ) {

				vec2 Xi = hammersley( i, GGX_SAMPLES );

				// With V = N, sample the reflected direction directly.
				float invQ = 1.0 / ( 1.0 - Xi.x + alpha2 * Xi.x );
				float NdotL = ( 1.0 - Xi.x - alpha2 * Xi.x ) * invQ;

				if ( NdotL > 0.0 ) {

					float phi = 2.0 * PI * Xi.y;
					float sinTheta = 2.0 * alpha * sqrt( Xi.x * ( 1.0 - Xi.x ) ) * invQ;
					vec3 L = N * NdotL + ( tangent * cos( phi ) + bitangent * sin( phi ) ) * sinTheta;

					// Match the source mip to the sample's solid angle. The terms
					// independent of the sample are precomputed in lodBias.
					float d = alpha2 * invQ;
					float lod = max( log2( d ) + lodBias, 0.0 );

					// Weight by NdotL for the split-sum approximation
					prefilteredColor += textureLod( envMap, L, lod ).rgb * NdotL;
					totalWeight += NdotL;

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function Wb(){return oa("PMREMGGXIntegration",{envMap:{value:null},roughness:{value:0},sourceLod:{value:0},sourceSize:{value:_g}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float sourceLod;
		uniform int sourceSize;

		void main() {

			vec3 N = normalize( vWorldDirection );

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			float texelSize = 2.0 / float( sourceSize );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			// Pair opposite texels: only the one in N's hemisphere contributes.
			for ( int face = 0; face < 3; face ++ ) {

				for ( int y = 0; y < sourceSize; y ++ ) {

					for ( int x = 0; x < sourceSize; x ++ ) {

						vec2 uv = ( vec2( x, y ) + 0.5 ) * texelSize - 1.0;
						vec3 texelDirection = face == 0 ? vec3( 1.0, uv ) : ( face == 1 ? vec3( uv.x, 1.0, uv.y ) : vec3( uv, 1.0 ) );

						float invDistance = inversesqrt( 1.0 + dot( uv, uv ) );
						float NdotL = dot( N, texelDirection );
						texelDirection *= NdotL < 0.0 ? - 1.0 : 1.0;
						NdotL = abs( NdotL ) * invDistance;

						// With V = N, NdotH squared is ( 1 + NdotL ) / 2. Common factors
						// in the GGX distribution and texel solid angle cancel when normalized.
						float d = 1.0 + alpha2 + ( alpha2 - 1.0 ) * NdotL;
						float weight = NdotL * invDistance * invDistance * invDistance / ( d * d );

						prefilteredColor += textureLod( envMap, texelDirection, sourceLod ).rgb * weight;
						totalWeight += weight;

					}

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function Xb(){return oa("PMREMSphericalGaussianBlur",{envMap:{value:null},sigma:{value:0}},`

		#define SAMPLES ${kb}
		#define GOLDEN_ANGLE 2.39996322973

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float sigma;

		#include <common>

		void main() {

			vec3 outputDirection = normalize( vWorldDirection );

			vec3 up = abs( outputDirection.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, outputDirection ) );
			vec3 bitangent = cross( outputDirection, tangent );

			// Truncate the kernel at three standard deviations or at the antipode.
			float thetaMax = min( 3.0 * sigma, PI );
			float truncation = 1.0 - exp( - 0.5 * thetaMax * thetaMax / ( sigma * sigma ) );

			vec3 accumColor = vec3( 0.0 );
			float accumWeight = 0.0;

			for ( int i = 0; i < SAMPLES; i ++ ) {

				// Stratified inverse-CDF sampling of the Gaussian, placed on a golden-angle spiral.
				float stratum = ( float( i ) + 0.5 ) / float( SAMPLES );
				float theta = sigma * sqrt( - 2.0 * log( 1.0 - stratum * truncation ) );
				float phi = float( i ) * GOLDEN_ANGLE;

				vec3 offset = cos( phi ) * tangent + sin( phi ) * bitangent;
				vec3 sampleDirection = cos( theta ) * outputDirection + sin( theta ) * offset;

				// Correct the planar sample density to solid angle.
				float weight = sin( theta ) / theta;

				accumColor += weight * textureLod( envMap, sampleDirection, 0.0 ).rgb;
				accumWeight += weight;

			}

			gl_FragColor = vec4( accumColor / accumWeight, 1.0 );

		}
	`)}function Zm(){return oa("PMREMEquirectangularToCubemap",{envMap:{value:null}},`

		varying vec3 vWorldDirection;

		uniform sampler2D envMap;

		#include <common>

		void main() {

			// Average four subpixel samples to preserve small, bright features.
			vec3 direction = normalize( vWorldDirection );
			vec3 dx = dFdx( direction ) * 0.25;
			vec3 dy = dFdy( direction ) * 0.25;

			vec3 color = textureLod( envMap, equirectUv( normalize( direction - dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction - dx + dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx + dy ) ), 0.0 ).rgb;
			gl_FragColor = vec4( color * 0.25, 1.0 );

		}
	`)}function Jm(){return oa("PMREMCubemapToCubemap",{envMap:{value:null},flipEnvMap:{value:-1}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float flipEnvMap;

		void main() {

			gl_FragColor = vec4( textureCube( envMap, vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) ).rgb, 1.0 );

		}
	`)}function qb(n){let t=new WeakMap,e=new WeakMap,i=null;function s(d,h=!1){return d==null?null:h?o(d):r(d)}function r(d){if(d&&d.isTexture){let h=d.mapping;if(h===oc||h===ac)if(t.has(d)){let m=t.get(d).texture;return a(m,d.mapping)}else{let m=d.image;if(m&&m.height>0){let y=new ra(m.height);return y.fromEquirectangularTexture(n,d),t.set(d,y),d.addEventListener("dispose",c),a(y.texture,d.mapping)}else return null}}return d}function o(d){if(d&&d.isTexture&&d.isPMREMTexture!==!0){let h=d.mapping,m=h===oc||h===ac,y=h===As||h===Ar;if(m||y){let g=e.get(d),p=g!==void 0?g.texture.pmremVersion:0;if(d.isRenderTargetTexture&&d.pmremVersion!==p)return i===null&&(i=new Jc(n)),g=m?i.fromEquirectangular(d,g):i.fromCubemap(d,g),g.texture.pmremVersion=d.pmremVersion,e.set(d,g),g.texture;if(g!==void 0)return g.texture;{let v=d.image;return m&&v&&v.height>0||y&&v&&l(v)?(i===null&&(i=new Jc(n)),g=m?i.fromEquirectangular(d):i.fromCubemap(d),g.texture.pmremVersion=d.pmremVersion,e.set(d,g),d.addEventListener("dispose",u),g.texture):null}}}return d}function a(d,h){return h===oc?d.mapping=As:h===ac&&(d.mapping=Ar),d}function l(d){let h=0,m=6;for(let y=0;y<m;y++)d[y]!==void 0&&h++;return h===m}function c(d){let h=d.target;h.removeEventListener("dispose",c);let m=t.get(h);m!==void 0&&(t.delete(h),m.dispose())}function u(d){let h=d.target;h.removeEventListener("dispose",u);let m=e.get(h);m!==void 0&&(e.delete(h),m.dispose())}function f(){t=new WeakMap,e=new WeakMap,i!==null&&(i.dispose(),i=null)}return{get:s,dispose:f}}function Yb(n){let t={};function e(i){if(t[i]!==void 0)return t[i];let s=n.getExtension(i);return t[i]=s,s}return{has:function(i){return e(i)!==null},init:function(){e("EXT_color_buffer_float"),e("WEBGL_clip_cull_distance"),e("OES_texture_float_linear"),e("EXT_color_buffer_half_float"),e("WEBGL_multisampled_render_to_texture"),e("WEBGL_render_shared_exponent")},get:function(i){let s=e(i);return s===null&&uo("WebGLRenderer: "+i+" extension not supported."),s}}}function $b(n,t,e,i){let s={},r=new WeakMap,o=new FinalizationRegistry(m=>delete s[m]);function a(m){l(m.target)}function l(m){m.index!==null&&t.remove(m.index);for(let g in m.attributes)t.remove(m.attributes[g]);m.removeEventListener("dispose",a),delete s[m.id],o.unregister(m);let y=r.get(m);y&&(t.remove(y),r.delete(m)),i.releaseStatesOfGeometry(m),m.isInstancedBufferGeometry===!0&&delete m._maxInstanceCount,e.memory.geometries--}function c(m,y){return s[y.id]!==void 0||(y.addEventListener("dispose",a),s[y.id]=new WeakRef(y),o.register(y,y.id,y),e.memory.geometries++),y}function u(m){let y=m.attributes;for(let g in y)t.update(y[g],n.ARRAY_BUFFER)}function f(m){let y=m.index,g=m.attributes.position,p=0;if(g===void 0)return;let v=y!==null?y.array.length:g.array.length/3-1,M=g.count>=65535?wo:So,b=new M(Math.ceil(v/3)*6,1),E=b.array;if(y!==null){let x=y.array;p=y.version;for(let T=0,D=0;T<v;T+=3){let R=x[T+0],P=x[T+1],F=x[T+2];E[D++]=R,E[D++]=P,E[D++]=P,E[D++]=F,E[D++]=F,E[D++]=R}}else{p=g.version;for(let x=0,T=0;x<v;x+=3){let D=x+0,R=x+1,P=x+2;E[T++]=D,E[T++]=R,E[T++]=R,E[T++]=P,E[T++]=P,E[T++]=D}}b.version=p;let A=r.get(m);A&&t.remove(A),r.set(m,b)}function d(m){let y=r.get(m);if(y){let g=m.index;g!==null&&y.version<g.version&&f(m)}else f(m);return r.get(m)}function h(){for(let m in s){let y=s[m].deref();y!==void 0&&l(y)}}return{get:c,update:u,getWireframeAttribute:d,dispose:h}}function Zb(n,t,e){let i;function s(f){i=f}let r,o;function a(f){r=f.type,o=f.bytesPerElement}function l(f,d){n.drawElements(i,d,r,f*o),e.update(d,i,1)}function c(f,d,h){h!==0&&(n.drawElementsInstanced(i,d,r,f*o,h),e.update(d,i,h))}function u(f,d,h){if(h===0)return;t.get("WEBGL_multi_draw").multiDrawElementsWEBGL(i,d,0,r,f,0,h);let y=0;for(let g=0;g<h;g++)y+=d[g];e.update(y,i,1)}this.setMode=s,this.setIndex=a,this.render=l,this.renderInstances=c,this.renderMultiDraw=u}function Jb(n){let t={geometries:0,textures:0},e={frame:0,calls:0,triangles:0,points:0,lines:0};function i(r,o,a){switch(e.calls++,o){case n.TRIANGLES:e.triangles+=a*(r/3);break;case n.LINES:e.lines+=a*(r/2);break;case n.LINE_STRIP:e.lines+=a*(r-1);break;case n.LINE_LOOP:e.lines+=a*r;break;case n.POINTS:e.points+=a*r;break;default:Nt("WebGLInfo: Unknown draw mode:",o);break}}function s(){e.calls=0,e.triangles=0,e.points=0,e.lines=0}return{memory:t,render:e,programs:null,autoReset:!0,reset:s,update:i}}function Kb(n,t,e){let i=new WeakMap,s=new Se;function r(o,a,l){let c=o.morphTargetInfluences,u=a.morphAttributes.position||a.morphAttributes.normal||a.morphAttributes.color,f=u!==void 0?u.length:0,d=i.get(a);if(d===void 0||d.count!==f){let D=function(){x.dispose(),i.delete(a),a.removeEventListener("dispose",D)};d!==void 0&&d.texture.dispose();let h=a.morphAttributes.position!==void 0,m=a.morphAttributes.normal!==void 0,y=a.morphAttributes.color!==void 0,g=a.morphAttributes.position||[],p=a.morphAttributes.normal||[],v=a.morphAttributes.color||[],M=0;h===!0&&(M=1),m===!0&&(M=2),y===!0&&(M=3);let b=a.attributes.position.count*M,E=1;b>t.maxTextureSize&&(E=Math.ceil(b/t.maxTextureSize),b=t.maxTextureSize);let A=new Float32Array(b*E*4*f),x=new xo(A,b,E,f);x.type=kn,x.needsUpdate=!0;let T=M*4;for(let R=0;R<f;R++){let P=g[R],F=p[R],k=v[R],I=b*E*4*R;for(let W=0;W<P.count;W++){let X=W*T;h===!0&&(s.fromBufferAttribute(P,W),A[I+X+0]=s.x,A[I+X+1]=s.y,A[I+X+2]=s.z,A[I+X+3]=0),m===!0&&(s.fromBufferAttribute(F,W),A[I+X+4]=s.x,A[I+X+5]=s.y,A[I+X+6]=s.z,A[I+X+7]=0),y===!0&&(s.fromBufferAttribute(k,W),A[I+X+8]=s.x,A[I+X+9]=s.y,A[I+X+10]=s.z,A[I+X+11]=k.itemSize===4?s.w:1)}}d={count:f,texture:x,size:new rt(b,E)},i.set(a,d),a.addEventListener("dispose",D)}if(o.isInstancedMesh===!0&&o.morphTexture!==null)l.getUniforms().setValue(n,"morphTexture",o.morphTexture,e);else{let h=0;for(let y=0;y<c.length;y++)h+=c[y];let m=a.morphTargetsRelative?1:1-h;l.getUniforms().setValue(n,"morphTargetBaseInfluence",m),l.getUniforms().setValue(n,"morphTargetInfluences",c)}l.getUniforms().setValue(n,"morphTargetsTexture",d.texture,e),l.getUniforms().setValue(n,"morphTargetsTextureSize",d.size)}return{update:r}}function jb(n,t,e,i,s){let r=new WeakMap;function o(c){let u=s.render.frame,f=c.geometry,d=t.get(c,f);if(r.get(d)!==u&&(t.update(d),r.set(d,u)),c.isInstancedMesh&&(c.hasEventListener("dispose",l)===!1&&c.addEventListener("dispose",l),r.get(c)!==u&&(e.update(c.instanceMatrix,n.ARRAY_BUFFER),c.instanceColor!==null&&e.update(c.instanceColor,n.ARRAY_BUFFER),r.set(c,u))),c.isSkinnedMesh){let h=c.skeleton;r.get(h)!==u&&(h.update(),r.set(h,u))}return d}function a(){r=new WeakMap}function l(c){let u=c.target;u.removeEventListener("dispose",l),i.releaseStatesOfObject(u),e.remove(u.instanceMatrix),u.instanceColor!==null&&e.remove(u.instanceColor)}return{update:o,dispose:a}}var Qb={[Bh]:"LINEAR_TONE_MAPPING",[kh]:"REINHARD_TONE_MAPPING",[zh]:"CINEON_TONE_MAPPING",[Vh]:"ACES_FILMIC_TONE_MAPPING",[Hh]:"AGX_TONE_MAPPING",[Wh]:"NEUTRAL_TONE_MAPPING",[Gh]:"CUSTOM_TONE_MAPPING"};function tM(n,t,e,i,s,r){let o=new An(t,e,{type:n,depthBuffer:s,stencilBuffer:r,samples:i?4:0,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,resolveDepthBuffer:!1,resolveStencilBuffer:!1}),a=null,l=null,c=null,u=new ce;u.setAttribute("position",new Xt([-1,3,0,-1,-1,0,3,-1,0],3)),u.setAttribute("uv",new Xt([0,2,0,0,2,0],2));let f=new Wl({uniforms:{tDiffuse:{value:null}},vertexShader:`
			precision highp float;

			uniform mat4 modelViewMatrix;
			uniform mat4 projectionMatrix;

			attribute vec3 position;
			attribute vec2 uv;

			varying vec2 vUv;

			void main() {
				vUv = uv;
				gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
			}`,fragmentShader:`
			precision highp float;

			uniform sampler2D tDiffuse;

			varying vec2 vUv;

			#include <tonemapping_pars_fragment>
			#include <colorspace_pars_fragment>

			void main() {
				gl_FragColor = texture2D( tDiffuse, vUv );

				#ifdef LINEAR_TONE_MAPPING
					gl_FragColor.rgb = LinearToneMapping( gl_FragColor.rgb );
				#elif defined( REINHARD_TONE_MAPPING )
					gl_FragColor.rgb = ReinhardToneMapping( gl_FragColor.rgb );
				#elif defined( CINEON_TONE_MAPPING )
					gl_FragColor.rgb = CineonToneMapping( gl_FragColor.rgb );
				#elif defined( ACES_FILMIC_TONE_MAPPING )
					gl_FragColor.rgb = ACESFilmicToneMapping( gl_FragColor.rgb );
				#elif defined( AGX_TONE_MAPPING )
					gl_FragColor.rgb = AgXToneMapping( gl_FragColor.rgb );
				#elif defined( NEUTRAL_TONE_MAPPING )
					gl_FragColor.rgb = NeutralToneMapping( gl_FragColor.rgb );
				#elif defined( CUSTOM_TONE_MAPPING )
					gl_FragColor.rgb = CustomToneMapping( gl_FragColor.rgb );
				#endif

				#ifdef SRGB_TRANSFER
					gl_FragColor = sRGBTransferOETF( gl_FragColor );
				#endif
			}`,depthTest:!1,depthWrite:!1}),d=new Re(u,f),h=new qo(-1,1,1,-1,0,1),m=null,y=null,g=!1,p,v=null,M=[],b=!1;this.setSize=function(E,A){o.setSize(E,A),a!==null&&a.setSize(E,A),l!==null&&l.setSize(E,A);for(let x=0;x<M.length;x++){let T=M[x];T.setSize&&T.setSize(E,A)}},this.setEffects=function(E){M=E,b=M.length>0&&M[0].isRenderPass===!0;let A=o.width,x=o.height;M.length>0&&a===null&&(a=new An(A,x,{type:Kn,depthBuffer:!1,stencilBuffer:!1}),l=new An(A,x,{type:Kn,depthBuffer:!1,stencilBuffer:!1}));let T=s===!0&&M.some(D=>D.needsDepthTexture===!0);T!==(o.depthTexture!==null)&&(T===!0&&c===null&&(c=new Ai(A,x),r===!0&&(c.format=Ri,c.type=Es)),o.dispose(),o.depthTexture=T?c:null,o.resolveDepthBuffer=T,o.storeMultisampledDepthBuffer=T);for(let D=0;D<M.length;D++){let R=M[D];R.setSize&&R.setSize(A,x),T&&R.needsDepthTexture===!0&&R.setDepthTexture&&R.setDepthTexture(c)}},this.begin=function(E,A){if(g||E.toneMapping===ui&&M.length===0)return!1;if(v=A,A!==null){let x=A.width,T=A.height;(o.width!==x||o.height!==T)&&this.setSize(x,T)}return b===!1&&E.setRenderTarget(o),p=E.toneMapping,E.toneMapping=ui,!0},this.hasRenderPass=function(){return b},this.end=function(E,A){E.toneMapping=p,g=!0;let x=o,T=a;for(let D=0;D<M.length;D++){let R=M[D];R.enabled!==!1&&(R.render(E,T,x,A),R.needsSwap!==!1&&(x=T,T=T===a?l:a))}if(m!==E.outputColorSpace||y!==E.toneMapping){m=E.outputColorSpace,y=E.toneMapping,f.defines={},Jt.getTransfer(m)===ae&&(f.defines.SRGB_TRANSFER="");let D=Qb[y];D&&(f.defines[D]=""),f.needsUpdate=!0}f.uniforms.tDiffuse.value=x.texture,E.setRenderTarget(v),E.render(d,h),v=null,g=!1},this.isCompositing=function(){return g},this.dispose=function(){o.dispose(),a!==null&&a.dispose(),l!==null&&l.dispose(),u.dispose(),f.dispose()}}var vg=new pn,yg=new Ai(1,1),xg=new Ro(1),bg=new xo,Mg=new Ll,Sg=new Co,Km=[],jm=[],Qm=new Float32Array(16),tg=new Float32Array(9),eg=new Float32Array(4);function Rr(n,t,e){let i=n[0];if(i<=0||i>0)return n;let s=t*e,r=Km[s];if(r===void 0&&(r=new Float32Array(s),Km[s]=r),t!==0){i.toArray(r,0);for(let o=1,a=0;o!==t;++o)a+=e,n[o].toArray(r,a)}return r}function ke(n,t){if(n.length!==t.length)return!1;for(let e=0,i=n.length;e<i;e++)if(n[e]!==t[e])return!1;return!0}function ze(n,t){for(let e=0,i=t.length;e<i;e++)n[e]=t[e]}function jc(n,t){let e=jm[t];e===void 0&&(e=new Int32Array(t),jm[t]=e);for(let i=0;i!==t;++i)e[i]=n.allocateTextureUnit();return e}function eM(n,t){let e=this.cache;e[0]!==t&&(n.uniform1f(this.addr,t),e[0]=t)}function nM(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2f(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(ke(e,t))return;n.uniform2fv(this.addr,t),ze(e,t)}}function iM(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3f(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else if(t.r!==void 0)(e[0]!==t.r||e[1]!==t.g||e[2]!==t.b)&&(n.uniform3f(this.addr,t.r,t.g,t.b),e[0]=t.r,e[1]=t.g,e[2]=t.b);else{if(ke(e,t))return;n.uniform3fv(this.addr,t),ze(e,t)}}function sM(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4f(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(ke(e,t))return;n.uniform4fv(this.addr,t),ze(e,t)}}function rM(n,t){let e=this.cache,i=t.elements;if(i===void 0){if(ke(e,t))return;n.uniformMatrix2fv(this.addr,!1,t),ze(e,t)}else{if(ke(e,i))return;eg.set(i),n.uniformMatrix2fv(this.addr,!1,eg),ze(e,i)}}function oM(n,t){let e=this.cache,i=t.elements;if(i===void 0){if(ke(e,t))return;n.uniformMatrix3fv(this.addr,!1,t),ze(e,t)}else{if(ke(e,i))return;tg.set(i),n.uniformMatrix3fv(this.addr,!1,tg),ze(e,i)}}function aM(n,t){let e=this.cache,i=t.elements;if(i===void 0){if(ke(e,t))return;n.uniformMatrix4fv(this.addr,!1,t),ze(e,t)}else{if(ke(e,i))return;Qm.set(i),n.uniformMatrix4fv(this.addr,!1,Qm),ze(e,i)}}function lM(n,t){let e=this.cache;e[0]!==t&&(n.uniform1i(this.addr,t),e[0]=t)}function cM(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2i(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(ke(e,t))return;n.uniform2iv(this.addr,t),ze(e,t)}}function uM(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3i(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(ke(e,t))return;n.uniform3iv(this.addr,t),ze(e,t)}}function hM(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4i(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(ke(e,t))return;n.uniform4iv(this.addr,t),ze(e,t)}}function fM(n,t){let e=this.cache;e[0]!==t&&(n.uniform1ui(this.addr,t),e[0]=t)}function dM(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2ui(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(ke(e,t))return;n.uniform2uiv(this.addr,t),ze(e,t)}}function pM(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3ui(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(ke(e,t))return;n.uniform3uiv(this.addr,t),ze(e,t)}}function mM(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4ui(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(ke(e,t))return;n.uniform4uiv(this.addr,t),ze(e,t)}}function Qc(n){return n.version===0&&(n.compareFunction=tf,n.needsUpdate=!0),n}function gM(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s);let r;this.type===n.SAMPLER_2D_SHADOW?r=Qc(yg):r=vg,e.setTexture2D(t||r,s)}function _M(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s),e.setTexture3D(t||Mg,s)}function vM(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s);let r;this.type===n.SAMPLER_CUBE_SHADOW?r=Qc(xg):r=Sg,e.setTextureCube(t||r,s)}function yM(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s),e.setTexture2DArray(t||bg,s)}function xM(n){switch(n){case 5126:return eM;case 35664:return nM;case 35665:return iM;case 35666:return sM;case 35674:return rM;case 35675:return oM;case 35676:return aM;case 5124:case 35670:return lM;case 35667:case 35671:return cM;case 35668:case 35672:return uM;case 35669:case 35673:return hM;case 5125:return fM;case 36294:return dM;case 36295:return pM;case 36296:return mM;case 35678:case 36198:case 36298:case 36306:case 35682:return gM;case 35679:case 36299:case 36307:return _M;case 35680:case 36300:case 36308:case 36293:return vM;case 36289:case 36303:case 36311:case 36292:return yM}}function bM(n,t){n.uniform1fv(this.addr,t)}function MM(n,t){let e=Rr(t,this.size,2);n.uniform2fv(this.addr,e)}function SM(n,t){let e=Rr(t,this.size,3);n.uniform3fv(this.addr,e)}function wM(n,t){let e=Rr(t,this.size,4);n.uniform4fv(this.addr,e)}function TM(n,t){let e=Rr(t,this.size,4);n.uniformMatrix2fv(this.addr,!1,e)}function AM(n,t){let e=Rr(t,this.size,9);n.uniformMatrix3fv(this.addr,!1,e)}function EM(n,t){let e=Rr(t,this.size,16);n.uniformMatrix4fv(this.addr,!1,e)}function CM(n,t){n.uniform1iv(this.addr,t)}function RM(n,t){n.uniform2iv(this.addr,t)}function PM(n,t){n.uniform3iv(this.addr,t)}function IM(n,t){n.uniform4iv(this.addr,t)}function DM(n,t){n.uniform1uiv(this.addr,t)}function LM(n,t){n.uniform2uiv(this.addr,t)}function NM(n,t){n.uniform3uiv(this.addr,t)}function UM(n,t){n.uniform4uiv(this.addr,t)}function FM(n,t,e){let i=this.cache,s=t.length,r=jc(e,s);ke(i,r)||(n.uniform1iv(this.addr,r),ze(i,r));let o;this.type===n.SAMPLER_2D_SHADOW?o=Qc(yg):o=vg;for(let a=0;a!==s;++a)e.setTexture2D(t[a]||o,r[a])}function OM(n,t,e){let i=this.cache,s=t.length,r=jc(e,s);ke(i,r)||(n.uniform1iv(this.addr,r),ze(i,r));for(let o=0;o!==s;++o)e.setTexture3D(t[o]||Mg,r[o])}function BM(n,t,e){let i=this.cache,s=t.length,r=jc(e,s);ke(i,r)||(n.uniform1iv(this.addr,r),ze(i,r));let o;this.type===n.SAMPLER_CUBE_SHADOW?o=Qc(xg):o=Sg;for(let a=0;a!==s;++a)e.setTextureCube(t[a]||o,r[a])}function kM(n,t,e){let i=this.cache,s=t.length,r=jc(e,s);ke(i,r)||(n.uniform1iv(this.addr,r),ze(i,r));for(let o=0;o!==s;++o)e.setTexture2DArray(t[o]||bg,r[o])}function zM(n){switch(n){case 5126:return bM;case 35664:return MM;case 35665:return SM;case 35666:return wM;case 35674:return TM;case 35675:return AM;case 35676:return EM;case 5124:case 35670:return CM;case 35667:case 35671:return RM;case 35668:case 35672:return PM;case 35669:case 35673:return IM;case 5125:return DM;case 36294:return LM;case 36295:return NM;case 36296:return UM;case 35678:case 36198:case 36298:case 36306:case 35682:return FM;case 35679:case 36299:case 36307:return OM;case 35680:case 36300:case 36308:case 36293:return BM;case 36289:case 36303:case 36311:case 36292:return kM}}var pf=class{constructor(t,e,i){this.id=t,this.addr=i,this.cache=[],this.type=e.type,this.setValue=xM(e.type)}},mf=class{constructor(t,e,i){this.id=t,this.addr=i,this.cache=[],this.type=e.type,this.size=e.size,this.setValue=zM(e.type)}},gf=class{constructor(t){this.id=t,this.seq=[],this.map={}}setValue(t,e,i){let s=this.seq;for(let r=0,o=s.length;r!==o;++r){let a=s[r];a.setValue(t,e[a.id],i)}}},ff=/(\w+)(\])?(\[|\.)?/g;function ng(n,t){n.seq.push(t),n.map[t.id]=t}function VM(n,t,e){let i=n.name,s=i.length;for(ff.lastIndex=0;;){let r=ff.exec(i),o=ff.lastIndex,a=r[1],l=r[2]==="]",c=r[3];if(l&&(a=a|0),c===void 0||c==="["&&o+2===s){ng(e,c===void 0?new pf(a,n,t):new mf(a,n,t));break}else{let f=e.map[a];f===void 0&&(f=new gf(a),ng(e,f)),e=f}}}var Cr=class{constructor(t,e){this.seq=[],this.map={};let i=t.getProgramParameter(e,t.ACTIVE_UNIFORMS);for(let o=0;o<i;++o){let a=t.getActiveUniform(e,o),l=t.getUniformLocation(e,a.name);VM(a,l,this)}let s=[],r=[];for(let o of this.seq)o.type===t.SAMPLER_2D_SHADOW||o.type===t.SAMPLER_CUBE_SHADOW||o.type===t.SAMPLER_2D_ARRAY_SHADOW?s.push(o):r.push(o);s.length>0&&(this.seq=s.concat(r))}setValue(t,e,i,s){let r=this.map[e];r!==void 0&&r.setValue(t,i,s)}setOptional(t,e,i){let s=e[i];s!==void 0&&this.setValue(t,i,s)}static upload(t,e,i,s){for(let r=0,o=e.length;r!==o;++r){let a=e[r],l=i[a.id];l.needsUpdate!==!1&&a.setValue(t,l.value,s)}}static seqWithValue(t,e){let i=[];for(let s=0,r=t.length;s!==r;++s){let o=t[s];o.id in e&&i.push(o)}return i}};function ig(n,t,e){let i=n.createShader(t);return n.shaderSource(i,e),n.compileShader(i),i}var GM=37297,HM=0;function WM(n,t){let e=n.split(`
`),i=[],s=Math.max(t-6,0),r=Math.min(t+6,e.length);for(let o=s;o<r;o++){let a=o+1;i.push(`${a===t?">":" "} ${a}: ${e[o]}`)}return i.join(`
`)}var sg=new Ft;function XM(n){Jt._getMatrix(sg,Jt.workingColorSpace,n);let t=`mat3( ${sg.elements.map(e=>e.toFixed(4))} )`;switch(Jt.getTransfer(n)){case vo:return[t,"LinearTransferOETF"];case ae:return[t,"sRGBTransferOETF"];default:return Rt("WebGLProgram: Unsupported color space: ",n),[t,"LinearTransferOETF"]}}function rg(n,t,e){let i=n.getShaderParameter(t,n.COMPILE_STATUS),r=(n.getShaderInfoLog(t)||"").trim();if(i&&r==="")return"";let o=/ERROR: 0:(\d+)/.exec(r);if(o){let a=parseInt(o[1]);return e.toUpperCase()+`

`+r+`

`+WM(n.getShaderSource(t),a)}else return r}function qM(n,t){let e=XM(t);return[`vec4 ${n}( vec4 value ) {`,`	return ${e[1]}( vec4( ${e[0]} * value.rgb, value.a ) );`,"}"].join(`
`)}var YM={[Bh]:"Linear",[kh]:"Reinhard",[zh]:"Cineon",[Vh]:"ACESFilmic",[Hh]:"AgX",[Wh]:"Neutral",[Gh]:"Custom"};function $M(n,t){let e=YM[t];return e===void 0?(Rt("WebGLProgram: Unsupported toneMapping:",t),"vec3 "+n+"( vec3 color ) { return LinearToneMapping( color ); }"):"vec3 "+n+"( vec3 color ) { return "+e+"ToneMapping( color ); }"}var Zc=new N;function ZM(){Jt.getLuminanceCoefficients(Zc);let n=Zc.x.toFixed(4),t=Zc.y.toFixed(4),e=Zc.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${n}, ${t}, ${e} );`,"	return dot( weights, rgb );","}"].join(`
`)}function JM(n){return[n.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",n.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(sa).join(`
`)}function KM(n){let t=[];for(let e in n){let i=n[e];i!==!1&&t.push("#define "+e+" "+i)}return t.join(`
`)}function jM(n,t){let e={},i=n.getProgramParameter(t,n.ACTIVE_ATTRIBUTES);for(let s=0;s<i;s++){let r=n.getActiveAttrib(t,s),o=r.name,a=1;r.type===n.FLOAT_MAT2&&(a=2),r.type===n.FLOAT_MAT3&&(a=3),r.type===n.FLOAT_MAT4&&(a=4),e[o]={type:r.type,location:n.getAttribLocation(t,o),locationSize:a}}return e}function sa(n){return n!==""}function og(n,t){let e=t.numSpotLightShadows+t.numSpotLightMaps-t.numSpotLightShadowsWithMaps;return n.replace(/NUM_SUN_LIGHTS/g,t.numSunLights).replace(/NUM_DIR_LIGHTS/g,t.numDirLights).replace(/NUM_SPOT_LIGHTS/g,t.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,t.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,e).replace(/NUM_RECT_AREA_LIGHTS/g,t.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,t.numPointLights).replace(/NUM_HEMI_LIGHTS/g,t.numHemiLights).replace(/NUM_SUN_LIGHT_SHADOWS/g,t.numSunLightShadows).replace(/NUM_DIR_LIGHT_SHADOWS/g,t.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,t.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,t.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,t.numPointLightShadows).replace(/NUM_LIGHT_PROBE_GRIDS/g,t.numLightProbeGrids)}function ag(n,t){return n.replace(/NUM_CLIPPING_PLANES/g,t.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,t.numClippingPlanes-t.numClipIntersection)}var QM=/^[ \t]*#include +<([\w\d./]+)>/gm;function _f(n){return n.replace(QM,tS)}function tS(n,t){let e=Ht[t];if(e===void 0)throw new Error("THREE.WebGLProgram: Can not resolve #include <"+t+">");return _f(e)}var eS=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function lg(n){return n.replace(eS,nS)}function nS(n,t,e,i){let s="";for(let r=parseInt(t);r<parseInt(e);r++)s+=i.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function cg(n){let t=`precision ${n.precision} float;
	precision ${n.precision} int;
	precision ${n.precision} sampler2D;
	precision ${n.precision} samplerCube;
	precision ${n.precision} sampler3D;
	precision ${n.precision} sampler2DArray;
	precision ${n.precision} sampler2DShadow;
	precision ${n.precision} samplerCubeShadow;
	precision ${n.precision} sampler2DArrayShadow;
	precision ${n.precision} isampler2D;
	precision ${n.precision} isampler3D;
	precision ${n.precision} isamplerCube;
	precision ${n.precision} isampler2DArray;
	precision ${n.precision} usampler2D;
	precision ${n.precision} usampler3D;
	precision ${n.precision} usamplerCube;
	precision ${n.precision} usampler2DArray;
	`;return n.precision==="highp"?t+=`
#define HIGH_PRECISION`:n.precision==="mediump"?t+=`
#define MEDIUM_PRECISION`:n.precision==="lowp"&&(t+=`
#define LOW_PRECISION`),t}var iS={[Zo]:"SHADOWMAP_TYPE_PCF",[wr]:"SHADOWMAP_TYPE_VSM"};function sS(n){return iS[n.shadowMapType]||"SHADOWMAP_TYPE_BASIC"}var rS={[Ar]:"ENVMAP_MODE_REFRACTION"};function oS(n){return n.envMap===!1?"ENVMAP_MODE_REFLECTION":rS[n.envMapMode]||"ENVMAP_MODE_REFLECTION"}var aS={[rc]:"ENVMAP_BLENDING_MULTIPLY",[bm]:"ENVMAP_BLENDING_MIX",[Mm]:"ENVMAP_BLENDING_ADD"};function lS(n){return n.envMap===!1?"ENVMAP_BLENDING_NONE":aS[n.combine]||"ENVMAP_BLENDING_NONE"}function cS(n,t,e,i){let s=n.getContext(),r=e.defines,o=e.vertexShader,a=e.fragmentShader,l=sS(e),c=e.envMapPMREM===!0?"ENVMAP_TYPE_PMREM":"ENVMAP_TYPE_CUBE",u=oS(e),f=lS(e),d=JM(e),h=KM(r),m=s.createProgram(),y,g,p=e.glslVersion?"#version "+e.glslVersion+`
`:"";e.isRawShaderMaterial?(y=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,h].filter(sa).join(`
`),y.length>0&&(y+=`
`),g=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,h].filter(sa).join(`
`),g.length>0&&(g+=`
`)):(y=[cg(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,h,e.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",e.batching?"#define USE_BATCHING":"",e.batchingColor?"#define USE_BATCHING_COLOR":"",e.instancing?"#define USE_INSTANCING":"",e.instancingColor?"#define USE_INSTANCING_COLOR":"",e.instancingMorph?"#define USE_INSTANCING_MORPH":"",e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.map?"#define USE_MAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+u:"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.displacementMap?"#define USE_DISPLACEMENTMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.mapUv?"#define MAP_UV "+e.mapUv:"",e.alphaMapUv?"#define ALPHAMAP_UV "+e.alphaMapUv:"",e.lightMapUv?"#define LIGHTMAP_UV "+e.lightMapUv:"",e.aoMapUv?"#define AOMAP_UV "+e.aoMapUv:"",e.emissiveMapUv?"#define EMISSIVEMAP_UV "+e.emissiveMapUv:"",e.bumpMapUv?"#define BUMPMAP_UV "+e.bumpMapUv:"",e.normalMapUv?"#define NORMALMAP_UV "+e.normalMapUv:"",e.displacementMapUv?"#define DISPLACEMENTMAP_UV "+e.displacementMapUv:"",e.metalnessMapUv?"#define METALNESSMAP_UV "+e.metalnessMapUv:"",e.roughnessMapUv?"#define ROUGHNESSMAP_UV "+e.roughnessMapUv:"",e.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+e.anisotropyMapUv:"",e.clearcoatMapUv?"#define CLEARCOATMAP_UV "+e.clearcoatMapUv:"",e.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+e.clearcoatNormalMapUv:"",e.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+e.clearcoatRoughnessMapUv:"",e.diffuseRoughnessMapUv?"#define DIFFUSE_ROUGHNESSMAP_UV "+e.diffuseRoughnessMapUv:"",e.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+e.iridescenceMapUv:"",e.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+e.iridescenceThicknessMapUv:"",e.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+e.sheenColorMapUv:"",e.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+e.sheenRoughnessMapUv:"",e.specularMapUv?"#define SPECULARMAP_UV "+e.specularMapUv:"",e.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+e.specularColorMapUv:"",e.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+e.specularIntensityMapUv:"",e.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+e.transmissionMapUv:"",e.thicknessMapUv?"#define THICKNESSMAP_UV "+e.thicknessMapUv:"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexNormals?"#define HAS_NORMAL":"",e.vertexColors?"#define USE_COLOR":"",e.vertexAlphas?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.flatShading?"#define FLAT_SHADED":"",e.skinning?"#define USE_SKINNING":"",e.morphTargets?"#define USE_MORPHTARGETS":"",e.morphNormals&&e.flatShading===!1?"#define USE_MORPHNORMALS":"",e.morphColors?"#define USE_MORPHCOLORS":"",e.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+e.morphTextureStride:"",e.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+e.morphTargetsCount:"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.sizeAttenuation?"#define USE_SIZEATTENUATION":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(sa).join(`
`),g=[cg(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,h,e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",e.map?"#define USE_MAP":"",e.matcap?"#define USE_MATCAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+c:"",e.envMap?"#define "+u:"",e.envMap?"#define "+f:"",e.envMapPMREM?"#define ENVMAP_MAX_LOD "+e.envMapMaxLod+".0":"",e.envMapPMREM?"#define ENVMAP_SIZE "+e.envMapSize+".0":"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.packedNormalMap?"#define USE_PACKED_NORMALMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoat?"#define USE_CLEARCOAT":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughness?"#define USE_DIFFUSE_ROUGHNESS":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.dispersion?"#define USE_DISPERSION":"",e.retroreflection?"#define USE_RETROREFLECTION":"",e.iridescence?"#define USE_IRIDESCENCE":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaTest?"#define USE_ALPHATEST":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.sheen?"#define USE_SHEEN":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexColors||e.instancingColor?"#define USE_COLOR":"",e.vertexAlphas||e.batchingColor?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.gradientMap?"#define USE_GRADIENTMAP":"",e.flatShading?"#define FLAT_SHADED":"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",e.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",e.toneMapping!==ui?"#define TONE_MAPPING":"",e.toneMapping!==ui?Ht.tonemapping_pars_fragment:"",e.toneMapping!==ui?$M("toneMapping",e.toneMapping):"",e.dithering?"#define DITHERING":"",e.opaque?"#define OPAQUE":"",Ht.colorspace_pars_fragment,qM("linearToOutputTexel",e.outputColorSpace),ZM(),e.useDepthPacking?"#define DEPTH_PACKING "+e.depthPacking:"",`
`].filter(sa).join(`
`)),o=_f(o),o=og(o,e),o=ag(o,e),a=_f(a),a=og(a,e),a=ag(a,e),o=lg(o),a=lg(a),e.isRawShaderMaterial!==!0&&(p=`#version 300 es
`,y=[d,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+y,g=["#define varying in",e.glslVersion===ef?"":"layout(location = 0) out highp vec4 pc_fragColor;",e.glslVersion===ef?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+g);let v=p+y+o,M=p+g+a,b=ig(s,s.VERTEX_SHADER,v),E=ig(s,s.FRAGMENT_SHADER,M);s.attachShader(m,b),s.attachShader(m,E),e.index0AttributeName!==void 0?s.bindAttribLocation(m,0,e.index0AttributeName):e.hasPositionAttribute===!0&&s.bindAttribLocation(m,0,"position"),s.linkProgram(m);function A(R){if(n.debug.checkShaderErrors){let P=s.getProgramInfoLog(m)||"",F=s.getShaderInfoLog(b)||"",k=s.getShaderInfoLog(E)||"",I=P.trim(),W=F.trim(),X=k.trim(),B=!0,Q=!0;if(s.getProgramParameter(m,s.LINK_STATUS)===!1)if(B=!1,typeof n.debug.onShaderError=="function")n.debug.onShaderError(s,m,b,E);else{let G=rg(s,b,"vertex"),tt=rg(s,E,"fragment");Nt("WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(m,s.VALIDATE_STATUS)+`

Material Name: `+R.name+`
Material Type: `+R.type+`

Program Info Log: `+I+`
`+G+`
`+tt)}else I!==""?Rt("WebGLProgram: Program Info Log:",I):(W===""||X==="")&&(Q=!1);Q&&(R.diagnostics={runnable:B,programLog:I,vertexShader:{log:W,prefix:y},fragmentShader:{log:X,prefix:g}})}s.deleteShader(b),s.deleteShader(E),x=new Cr(s,m),T=jM(s,m)}let x;this.getUniforms=function(){return x===void 0&&A(this),x};let T;this.getAttributes=function(){return T===void 0&&A(this),T};let D=e.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return D===!1&&(D=s.getProgramParameter(m,GM)),D},this.destroy=function(){i.releaseStatesOfProgram(this),s.deleteProgram(m),this.program=void 0},this.type=e.shaderType,this.name=e.shaderName,this.id=HM++,this.cacheKey=t,this.usedTimes=1,this.program=m,this.vertexShader=b,this.fragmentShader=E,this}var uS=0,vf=class{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(t,e,i){let s=this._getShaderCacheForMaterial(t);return s.has(e)===!1&&(s.add(e),e.usedTimes++),s.has(i)===!1&&(s.add(i),i.usedTimes++),this}remove(t){let e=this.materialCache.get(t);for(let i of e)i.usedTimes--,i.usedTimes===0&&this.shaderCache.delete(i.code);return this.materialCache.delete(t),this}getVertexShaderStage(t){return this._getShaderStage(t.vertexShader)}getFragmentShaderStage(t){return this._getShaderStage(t.fragmentShader)}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(t){let e=this.materialCache,i=e.get(t);return i===void 0&&(i=new Set,e.set(t,i)),i}_getShaderStage(t){let e=this.shaderCache,i=e.get(t);return i===void 0&&(i=new yf(t),e.set(t,i)),i}},yf=class{constructor(t){this.id=uS++,this.code=t,this.usedTimes=0}};function hS(n){return n===es||n===ea||n===na}function fS(n,t,e,i,s,r){let o=new bo,a=new vf,l=new Set,c=[],u=new Map,f=i.logarithmicDepthBuffer,d={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distance",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function h(x){return l.add(x),x===0?"uv":`uv${x}`}function m(x,T,D,R,P,F){let k=R.fog,I=P.geometry,W=x.isMeshStandardMaterial||x.isMeshLambertMaterial||x.isMeshPhongMaterial?R.environment:null,X=x.isMeshStandardMaterial||x.isMeshLambertMaterial&&!x.envMap||x.isMeshPhongMaterial&&!x.envMap,B=t.get(x.envMap||W,X),Q=d[x.type],G=i.precision;x.precision!==null&&(G=i.getMaxPrecision(x.precision),G!==x.precision&&Rt("WebGLProgram.getParameters:",x.precision,"not supported, using",G,"instead."));let tt=I.morphAttributes.position||I.morphAttributes.normal||I.morphAttributes.color,et=tt!==void 0?tt.length:0,xt=0;I.morphAttributes.position!==void 0&&(xt=1),I.morphAttributes.normal!==void 0&&(xt=2),I.morphAttributes.color!==void 0&&(xt=3);let Dt,Z,dt,yt;if(Q){let gt=fi[Q];Dt=gt.vertexShader,Z=gt.fragmentShader}else{Dt=x.vertexShader,Z=x.fragmentShader;let gt=a.getVertexShaderStage(x),le=a.getFragmentShaderStage(x);a.update(x,gt,le),dt=gt.id,yt=le.id}let Et=n.getRenderTarget(),mt=n.state.buffers.depth.getReversed(),Ut=P.isInstancedMesh===!0,Ee=P.isBatchedMesh===!0,Pt=!!x.map,te=!!x.matcap,oe=!!B,qt=oe&&B.isPMREMTexture===!0,Ze=!!x.aoMap,Le=!!x.lightMap,dn=!!x.bumpMap&&x.wireframe===!1,we=!!x.normalMap,Qn=!!x.displacementMap,Ge=!!x.emissiveMap,Pn=!!x.metalnessMap,In=!!x.roughnessMap,Dn=x.anisotropy>0,O=x.clearcoat>0,Ln=x.diffuseRoughness>0,ve=x.dispersion>0,ye=x.retroreflectivity>0,pt=x.iridescence>0,Ne=x.sheen>0,Lt=x.transmission>0,Ot=Dn&&!!x.anisotropyMap,C=O&&!!x.clearcoatMap,S=O&&!!x.clearcoatNormalMap,V=O&&!!x.clearcoatRoughnessMap,nt=Ln&&!!x.diffuseRoughnessMap,j=pt&&!!x.iridescenceMap,ot=pt&&!!x.iridescenceThicknessMap,ht=Ne&&!!x.sheenColorMap,$=Ne&&!!x.sheenRoughnessMap,J=!!x.specularMap,lt=!!x.specularColorMap,L=!!x.specularIntensityMap,K=Lt&&!!x.transmissionMap,Y=Lt&&!!x.thicknessMap,ct=!!x.gradientMap,st=!!x.alphaMap,at=x.alphaTest>0,At=!!x.alphaHash,Gt=!!x.extensions,it=ui;x.toneMapped&&(Et===null||Et.isXRRenderTarget===!0)&&(it=n.toneMapping);let Ct=qt?B.isCompressedCubeTexture?B.image[0].mipmaps:B.mipmaps:null,zt={shaderID:Q,shaderType:x.type,shaderName:x.name,vertexShader:Dt,fragmentShader:Z,defines:x.defines,customVertexShaderID:dt,customFragmentShaderID:yt,isRawShaderMaterial:x.isRawShaderMaterial===!0,glslVersion:x.glslVersion,precision:G,batching:Ee,batchingColor:Ee&&P._colorsTexture!==null,instancing:Ut,instancingColor:Ut&&P.instanceColor!==null,instancingMorph:Ut&&P.morphTexture!==null,outputColorSpace:Et===null?n.outputColorSpace:Et.isXRRenderTarget===!0?Et.texture.colorSpace:Jt.workingColorSpace,alphaToCoverage:!!x.alphaToCoverage,map:Pt,matcap:te,envMap:oe,envMapMode:oe&&B.mapping,envMapPMREM:qt,envMapMaxLod:qt?Ct.length-1:null,envMapSize:qt?Ct[0].width:null,aoMap:Ze,lightMap:Le,bumpMap:dn,normalMap:we,displacementMap:Qn,emissiveMap:Ge,normalMapObjectSpace:we&&x.normalMapType===Tm,normalMapTangentSpace:we&&x.normalMapType===qc,packedNormalMap:we&&x.normalMapType===qc&&hS(x.normalMap.format),metalnessMap:Pn,roughnessMap:In,anisotropy:Dn,anisotropyMap:Ot,clearcoat:O,clearcoatMap:C,clearcoatNormalMap:S,clearcoatRoughnessMap:V,diffuseRoughness:Ln,diffuseRoughnessMap:nt,dispersion:ve,retroreflection:ye,iridescence:pt,iridescenceMap:j,iridescenceThicknessMap:ot,sheen:Ne,sheenColorMap:ht,sheenRoughnessMap:$,specularMap:J,specularColorMap:lt,specularIntensityMap:L,transmission:Lt,transmissionMap:K,thicknessMap:Y,gradientMap:ct,opaque:x.transparent===!1&&x.blending===Tr&&x.alphaToCoverage===!1,alphaMap:st,alphaTest:at,alphaHash:At,combine:x.combine,mapUv:Pt&&h(x.map.channel),aoMapUv:Ze&&h(x.aoMap.channel),lightMapUv:Le&&h(x.lightMap.channel),bumpMapUv:dn&&h(x.bumpMap.channel),normalMapUv:we&&h(x.normalMap.channel),displacementMapUv:Qn&&h(x.displacementMap.channel),emissiveMapUv:Ge&&h(x.emissiveMap.channel),metalnessMapUv:Pn&&h(x.metalnessMap.channel),roughnessMapUv:In&&h(x.roughnessMap.channel),anisotropyMapUv:Ot&&h(x.anisotropyMap.channel),clearcoatMapUv:C&&h(x.clearcoatMap.channel),clearcoatNormalMapUv:S&&h(x.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:V&&h(x.clearcoatRoughnessMap.channel),diffuseRoughnessMapUv:nt&&h(x.diffuseRoughnessMap.channel),iridescenceMapUv:j&&h(x.iridescenceMap.channel),iridescenceThicknessMapUv:ot&&h(x.iridescenceThicknessMap.channel),sheenColorMapUv:ht&&h(x.sheenColorMap.channel),sheenRoughnessMapUv:$&&h(x.sheenRoughnessMap.channel),specularMapUv:J&&h(x.specularMap.channel),specularColorMapUv:lt&&h(x.specularColorMap.channel),specularIntensityMapUv:L&&h(x.specularIntensityMap.channel),transmissionMapUv:K&&h(x.transmissionMap.channel),thicknessMapUv:Y&&h(x.thicknessMap.channel),alphaMapUv:st&&h(x.alphaMap.channel),vertexTangents:!!I.attributes.tangent&&(we||Dn),vertexNormals:!!I.attributes.normal,vertexColors:x.vertexColors,vertexAlphas:x.vertexColors===!0&&!!I.attributes.color&&I.attributes.color.itemSize===4,pointsUvs:P.isPoints===!0&&!!I.attributes.uv&&(Pt||st),fog:!!k,useFog:x.fog===!0,fogExp2:!!k&&k.isFogExp2,flatShading:x.wireframe===!1&&(x.flatShading===!0||I.attributes.normal===void 0&&we===!1&&(x.isMeshLambertMaterial||x.isMeshPhongMaterial||x.isMeshStandardMaterial||x.isMeshPhysicalMaterial)),sizeAttenuation:x.sizeAttenuation===!0,logarithmicDepthBuffer:f,reversedDepthBuffer:mt,skinning:P.isSkinnedMesh===!0,hasPositionAttribute:I.attributes.position!==void 0,morphTargets:I.morphAttributes.position!==void 0,morphNormals:I.morphAttributes.normal!==void 0,morphColors:I.morphAttributes.color!==void 0,morphTargetsCount:et,morphTextureStride:xt,numSunLights:T.sun.length,numDirLights:T.directional.length,numPointLights:T.point.length,numSpotLights:T.spot.length,numSpotLightMaps:T.spotLightMap.length,numRectAreaLights:T.rectArea.length,numHemiLights:T.hemi.length,numSunLightShadows:T.sunShadowMap.length,numDirLightShadows:T.directionalShadowMap.length,numPointLightShadows:T.pointShadowMap.length,numSpotLightShadows:T.spotShadowMap.length,numSpotLightShadowsWithMaps:T.numSpotLightShadowsWithMaps,numLightProbes:T.numLightProbes,numLightProbeGrids:F.filter(gt=>gt.texture!==null).length,numClippingPlanes:r.numPlanes,numClipIntersection:r.numIntersection,dithering:x.dithering,shadowMapEnabled:n.shadowMap.enabled&&D.length>0,shadowMapType:n.shadowMap.type,toneMapping:it,decodeVideoTexture:Pt&&x.map.isVideoTexture===!0&&Jt.getTransfer(x.map.colorSpace)===ae,decodeVideoTextureEmissive:Ge&&x.emissiveMap.isVideoTexture===!0&&Jt.getTransfer(x.emissiveMap.colorSpace)===ae,premultipliedAlpha:x.premultipliedAlpha,doubleSided:x.side===on,flipSided:x.side===fn,useDepthPacking:x.depthPacking>=0,depthPacking:x.depthPacking||0,index0AttributeName:x.index0AttributeName,extensionClipCullDistance:Gt&&x.extensions.clipCullDistance===!0&&e.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(Gt&&x.extensions.multiDraw===!0||Ee)&&e.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:e.has("KHR_parallel_shader_compile"),customProgramCacheKey:x.customProgramCacheKey()};return zt.vertexUv1s=l.has(1),zt.vertexUv2s=l.has(2),zt.vertexUv3s=l.has(3),l.clear(),zt}function y(x){let T=[];if(x.shaderID?T.push(x.shaderID):(T.push(x.customVertexShaderID),T.push(x.customFragmentShaderID)),x.defines!==void 0)for(let D in x.defines)T.push(D),T.push(x.defines[D]);return x.isRawShaderMaterial===!1&&(g(T,x),p(T,x),T.push(n.outputColorSpace)),T.push(x.customProgramCacheKey),T.join()}function g(x,T){x.push(T.precision),x.push(T.outputColorSpace),x.push(T.envMapMode),x.push(T.envMapPMREM),x.push(T.envMapMaxLod),x.push(T.envMapSize),x.push(T.mapUv),x.push(T.alphaMapUv),x.push(T.lightMapUv),x.push(T.aoMapUv),x.push(T.bumpMapUv),x.push(T.normalMapUv),x.push(T.displacementMapUv),x.push(T.emissiveMapUv),x.push(T.metalnessMapUv),x.push(T.roughnessMapUv),x.push(T.anisotropyMapUv),x.push(T.clearcoatMapUv),x.push(T.clearcoatNormalMapUv),x.push(T.clearcoatRoughnessMapUv),x.push(T.diffuseRoughnessMapUv),x.push(T.iridescenceMapUv),x.push(T.iridescenceThicknessMapUv),x.push(T.sheenColorMapUv),x.push(T.sheenRoughnessMapUv),x.push(T.specularMapUv),x.push(T.specularColorMapUv),x.push(T.specularIntensityMapUv),x.push(T.transmissionMapUv),x.push(T.thicknessMapUv),x.push(T.combine),x.push(T.fogExp2),x.push(T.sizeAttenuation),x.push(T.morphTargetsCount),x.push(T.numSunLights),x.push(T.numDirLights),x.push(T.numPointLights),x.push(T.numSpotLights),x.push(T.numSpotLightMaps),x.push(T.numHemiLights),x.push(T.numRectAreaLights),x.push(T.numSunLightShadows),x.push(T.numDirLightShadows),x.push(T.numPointLightShadows),x.push(T.numSpotLightShadows),x.push(T.numSpotLightShadowsWithMaps),x.push(T.numLightProbes),x.push(T.numLightProbeGrids),x.push(T.shadowMapType),x.push(T.toneMapping),x.push(T.numClippingPlanes),x.push(T.numClipIntersection),x.push(T.depthPacking)}function p(x,T){o.disableAll(),T.instancing&&o.enable(0),T.instancingColor&&o.enable(1),T.instancingMorph&&o.enable(2),T.matcap&&o.enable(3),T.envMap&&o.enable(4),T.normalMapObjectSpace&&o.enable(5),T.normalMapTangentSpace&&o.enable(6),T.clearcoat&&o.enable(7),T.iridescence&&o.enable(8),T.alphaTest&&o.enable(9),T.vertexColors&&o.enable(10),T.vertexAlphas&&o.enable(11),T.vertexUv1s&&o.enable(12),T.vertexUv2s&&o.enable(13),T.vertexUv3s&&o.enable(14),T.vertexTangents&&o.enable(15),T.anisotropy&&o.enable(16),T.alphaHash&&o.enable(17),T.batching&&o.enable(18),T.dispersion&&o.enable(19),T.retroreflection&&o.enable(24),T.diffuseRoughness&&o.enable(25),T.batchingColor&&o.enable(20),T.gradientMap&&o.enable(21),T.packedNormalMap&&o.enable(22),T.vertexNormals&&o.enable(23),x.push(o.mask),o.disableAll(),T.fog&&o.enable(0),T.useFog&&o.enable(1),T.flatShading&&o.enable(2),T.logarithmicDepthBuffer&&o.enable(3),T.reversedDepthBuffer&&o.enable(4),T.skinning&&o.enable(5),T.morphTargets&&o.enable(6),T.morphNormals&&o.enable(7),T.morphColors&&o.enable(8),T.premultipliedAlpha&&o.enable(9),T.shadowMapEnabled&&o.enable(10),T.doubleSided&&o.enable(11),T.flipSided&&o.enable(12),T.useDepthPacking&&o.enable(13),T.dithering&&o.enable(14),T.transmission&&o.enable(15),T.sheen&&o.enable(16),T.opaque&&o.enable(17),T.pointsUvs&&o.enable(18),T.decodeVideoTexture&&o.enable(19),T.decodeVideoTextureEmissive&&o.enable(20),T.alphaToCoverage&&o.enable(21),T.numLightProbeGrids>0&&o.enable(22),T.hasPositionAttribute&&o.enable(23),x.push(o.mask)}function v(x){let T=d[x.type],D;if(T){let R=fi[T];D=Wm.clone(R.uniforms)}else D=x.uniforms;return D}function M(x,T){let D=u.get(T);return D!==void 0?++D.usedTimes:(D=new cS(n,T,x,s),c.push(D),u.set(T,D)),D}function b(x){if(--x.usedTimes===0){let T=c.indexOf(x);c[T]=c[c.length-1],c.pop(),u.delete(x.cacheKey),x.destroy()}}function E(x){a.remove(x)}function A(){a.dispose()}return{getParameters:m,getProgramCacheKey:y,getUniforms:v,acquireProgram:M,releaseProgram:b,releaseShaderCache:E,programs:c,dispose:A}}function dS(){let n=new WeakMap;function t(o){return n.has(o)}function e(o){let a=n.get(o);return a===void 0&&(a={},n.set(o,a)),a}function i(o){n.delete(o)}function s(o,a,l){n.get(o)[a]=l}function r(){n=new WeakMap}return{has:t,get:e,remove:i,update:s,dispose:r}}function pS(n,t){return n.groupOrder!==t.groupOrder?n.groupOrder-t.groupOrder:n.renderOrder!==t.renderOrder?n.renderOrder-t.renderOrder:n.material.id!==t.material.id?n.material.id-t.material.id:n.materialVariant!==t.materialVariant?n.materialVariant-t.materialVariant:n.z!==t.z?n.z-t.z:n.id-t.id}function ug(n,t){return n.groupOrder!==t.groupOrder?n.groupOrder-t.groupOrder:n.renderOrder!==t.renderOrder?n.renderOrder-t.renderOrder:n.z!==t.z?t.z-n.z:n.id-t.id}function hg(){let n=[],t=0,e=[],i=[],s=[];function r(){t=0,e.length=0,i.length=0,s.length=0}function o(d){let h=0;return d.isInstancedMesh&&(h+=2),d.isSkinnedMesh&&(h+=1),h}function a(d,h,m,y,g,p){let v=n[t];return v===void 0?(v={id:d.id,object:d,geometry:h,material:m,materialVariant:o(d),groupOrder:y,renderOrder:d.renderOrder,z:g,group:p},n[t]=v):(v.id=d.id,v.object=d,v.geometry=h,v.material=m,v.materialVariant=o(d),v.groupOrder=y,v.renderOrder=d.renderOrder,v.z=g,v.group=p),t++,v}function l(d,h,m,y,g,p,v){v.reversedDepth===!0&&(g=-g);let M=a(d,h,m,y,g,p);m.transmission>0?i.push(M):m.transparent===!0?s.push(M):e.push(M)}function c(d,h,m,y,g,p){let v=a(d,h,m,y,g,p);m.transmission>0?i.unshift(v):m.transparent===!0?s.unshift(v):e.unshift(v)}function u(d,h){e.length>1&&e.sort(d||pS),i.length>1&&i.sort(h||ug),s.length>1&&s.sort(h||ug)}function f(){for(let d=t,h=n.length;d<h;d++){let m=n[d];if(m.id===null)break;m.id=null,m.object=null,m.geometry=null,m.material=null,m.group=null}}return{opaque:e,transmissive:i,transparent:s,init:r,push:l,unshift:c,finish:f,sort:u}}function mS(){let n=new WeakMap;function t(i,s){let r=n.get(i),o;return r===void 0?(o=new hg,n.set(i,[o])):s>=r.length?(o=new hg,r.push(o)):o=r[s],o}function e(){n=new WeakMap}return{get:t,dispose:e}}function gS(){let n={};return{get:function(t){if(n[t.id]!==void 0)return n[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={direction:new N,color:new kt};break;case"SpotLight":e={position:new N,direction:new N,color:new kt,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":e={position:new N,color:new kt,distance:0,decay:0};break;case"HemisphereLight":e={direction:new N,skyColor:new kt,groundColor:new kt};break;case"RectAreaLight":e={color:new kt,position:new N,halfWidth:new N,halfHeight:new N};break}return n[t.id]=e,e}}}function _S(){let n={};return{get:function(t){if(n[t.id]!==void 0)return n[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new rt};break;case"SpotLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new rt};break;case"PointLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new rt,shadowCameraNear:1,shadowCameraFar:1e3};break}return n[t.id]=e,e}}}var vS=0;function yS(n,t){return(t.castShadow?2:0)-(n.castShadow?2:0)+(t.map?1:0)-(n.map?1:0)}function xS(n){let t=new gS,e=_S(),i={version:0,hash:{sunLength:-1,directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numSunShadows:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],sun:[],sunShadow:[],sunShadowMap:[],sunShadowMatrix:[],sunShadowCascade:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let c=0;c<9;c++)i.probe.push(new N);let s=new N,r=new Qt,o=new Qt;function a(c){let u=0,f=0,d=0;for(let F=0;F<9;F++)i.probe[F].set(0,0,0);let h=0,m=0,y=0,g=0,p=0,v=0,M=0,b=0,E=0,A=0,x=0,T=0,D=0,R=0;c.sort(yS);for(let F=0,k=c.length;F<k;F++){let I=c[F],W=I.color,X=I.intensity,B=I.distance,Q=null;if(I.shadow&&I.shadow.map&&(I.shadow.map.texture.format===es?Q=I.shadow.map.texture:Q=I.shadow.map.depthTexture||I.shadow.map.texture),I.isAmbientLight)u+=W.r*X,f+=W.g*X,d+=W.b*X;else if(I.isLightProbe){for(let G=0;G<9;G++)i.probe[G].addScaledVector(I.sh.coefficients[G],X);R++}else if(I.isSunLight){let G=t.get(I);if(G.color.copy(I.color).multiplyScalar(I.intensity),I.castShadow){let tt=I.shadow,et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize.copy(tt.mapSize).multiply(tt.getFrameExtents()),i.sunShadow[m]=et,i.sunShadowMap[m]=Q;let xt=tt.getViewportCount();for(let Dt=0;Dt<xt;Dt++)i.sunShadowMatrix[y+Dt]=tt.getMatrix(Dt),i.sunShadowCascade[y+Dt]=tt._cascadeData[Dt];y+=xt,m++}i.sun[h]=G,h++}else if(I.isDirectionalLight){let G=t.get(I);if(G.color.copy(I.color).multiplyScalar(I.intensity),I.castShadow){let tt=I.shadow,et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize=tt.mapSize,i.directionalShadow[g]=et,i.directionalShadowMap[g]=Q,i.directionalShadowMatrix[g]=I.shadow.matrix,E++}i.directional[g]=G,g++}else if(I.isSpotLight){let G=t.get(I);G.position.setFromMatrixPosition(I.matrixWorld),G.color.copy(W).multiplyScalar(X),G.distance=B,G.coneCos=Math.cos(I.angle),G.penumbraCos=Math.cos(I.angle*(1-I.penumbra)),G.decay=I.decay,i.spot[v]=G;let tt=I.shadow;if(I.map&&(i.spotLightMap[T]=I.map,T++,tt.updateMatrices(I),I.castShadow&&D++),i.spotLightMatrix[v]=tt.matrix,I.castShadow){let et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize=tt.mapSize,i.spotShadow[v]=et,i.spotShadowMap[v]=Q,x++}v++}else if(I.isRectAreaLight){let G=t.get(I);G.color.copy(W).multiplyScalar(X),G.halfWidth.set(I.width*.5,0,0),G.halfHeight.set(0,I.height*.5,0),i.rectArea[M]=G,M++}else if(I.isPointLight){let G=t.get(I);if(G.color.copy(I.color).multiplyScalar(I.intensity),G.distance=I.distance,G.decay=I.decay,I.castShadow){let tt=I.shadow,et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize=tt.mapSize,et.shadowCameraNear=tt.camera.near,et.shadowCameraFar=tt.camera.far,i.pointShadow[p]=et,i.pointShadowMap[p]=Q,i.pointShadowMatrix[p]=I.shadow.matrix,A++}i.point[p]=G,p++}else if(I.isHemisphereLight){let G=t.get(I);G.skyColor.copy(I.color).multiplyScalar(X),G.groundColor.copy(I.groundColor).multiplyScalar(X),i.hemi[b]=G,b++}}M>0&&(n.has("OES_texture_float_linear")===!0?(i.rectAreaLTC1=_t.LTC_FLOAT_1,i.rectAreaLTC2=_t.LTC_FLOAT_2):(i.rectAreaLTC1=_t.LTC_HALF_1,i.rectAreaLTC2=_t.LTC_HALF_2)),i.ambient[0]=u,i.ambient[1]=f,i.ambient[2]=d;let P=i.hash;(P.sunLength!==h||P.directionalLength!==g||P.pointLength!==p||P.spotLength!==v||P.rectAreaLength!==M||P.hemiLength!==b||P.numSunShadows!==m||P.numDirectionalShadows!==E||P.numPointShadows!==A||P.numSpotShadows!==x||P.numSpotMaps!==T||P.numLightProbes!==R)&&(i.sun.length=h,i.directional.length=g,i.spot.length=v,i.rectArea.length=M,i.point.length=p,i.hemi.length=b,i.sunShadow.length=m,i.sunShadowMap.length=m,i.sunShadowMatrix.length=y,i.sunShadowCascade.length=y,i.directionalShadow.length=E,i.directionalShadowMap.length=E,i.directionalShadowMatrix.length=E,i.pointShadow.length=A,i.pointShadowMap.length=A,i.pointShadowMatrix.length=A,i.spotShadow.length=x,i.spotShadowMap.length=x,i.spotLightMatrix.length=x+T-D,i.spotLightMap.length=T,i.numSpotLightShadowsWithMaps=D,i.numLightProbes=R,P.sunLength=h,P.directionalLength=g,P.pointLength=p,P.spotLength=v,P.rectAreaLength=M,P.hemiLength=b,P.numSunShadows=m,P.numDirectionalShadows=E,P.numPointShadows=A,P.numSpotShadows=x,P.numSpotMaps=T,P.numLightProbes=R,i.version=vS++)}function l(c,u){let f=0,d=0,h=0,m=0,y=0,g=0,p=u.matrixWorldInverse;for(let v=0,M=c.length;v<M;v++){let b=c[v];if(b.isSunLight){let E=i.sun[f];E.direction.setFromMatrixPosition(b.matrixWorld),E.direction.transformDirection(p),f++}else if(b.isDirectionalLight){let E=i.directional[d];E.direction.setFromMatrixPosition(b.matrixWorld),s.setFromMatrixPosition(b.target.matrixWorld),E.direction.sub(s),E.direction.transformDirection(p),d++}else if(b.isSpotLight){let E=i.spot[m];E.position.setFromMatrixPosition(b.matrixWorld),E.position.applyMatrix4(p),E.direction.setFromMatrixPosition(b.matrixWorld),s.setFromMatrixPosition(b.target.matrixWorld),E.direction.sub(s),E.direction.transformDirection(p),m++}else if(b.isRectAreaLight){let E=i.rectArea[y];E.position.setFromMatrixPosition(b.matrixWorld),E.position.applyMatrix4(p),o.identity(),r.copy(b.matrixWorld),r.premultiply(p),o.extractRotation(r),E.halfWidth.set(b.width*.5,0,0),E.halfHeight.set(0,b.height*.5,0),E.halfWidth.applyMatrix4(o),E.halfHeight.applyMatrix4(o),y++}else if(b.isPointLight){let E=i.point[h];E.position.setFromMatrixPosition(b.matrixWorld),E.position.applyMatrix4(p),h++}else if(b.isHemisphereLight){let E=i.hemi[g];E.direction.setFromMatrixPosition(b.matrixWorld),E.direction.transformDirection(p),g++}}}return{setup:a,setupView:l,state:i}}function fg(n){let t=new xS(n),e=[],i=[],s=[];function r(f){u.camera=f,e.length=0,i.length=0,s.length=0}function o(f){f.isLightProbeGrid?s.push(f):e.push(f)}function a(f){i.push(f)}function l(){t.setup(e),s.sort((f,d)=>f.priority-d.priority||f.id-d.id)}function c(f){t.setupView(e,f)}let u={lightsArray:e,shadowsArray:i,lightProbeGridArray:s,camera:null,lights:t,transmissionRenderTarget:{},textureUnits:0};return{init:r,state:u,setupLights:l,setupLightsView:c,pushLight:o,pushShadow:a}}function bS(n){let t=new WeakMap;function e(s,r=0){let o=t.get(s),a;return o===void 0?(a=new fg(n),t.set(s,[a])):r>=o.length?(a=new fg(n),o.push(a)):a=o[r],a}function i(){t=new WeakMap}return{get:e,dispose:i}}var MS=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,SS=`uniform sampler2D shadow_pass;
uniform vec2 resolution;
uniform float radius;
void main() {
	const float samples = float( VSM_SAMPLES );
	float mean = 0.0;
	float squared_mean = 0.0;
	float uvStride = samples <= 1.0 ? 0.0 : 2.0 / ( samples - 1.0 );
	float uvStart = samples <= 1.0 ? 0.0 : - 1.0;
	for ( float i = 0.0; i < samples; i ++ ) {
		float uvOffset = uvStart + i * uvStride;
		#ifdef HORIZONTAL_PASS
			vec2 distribution = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( uvOffset, 0.0 ) * radius ) / resolution ).rg;
			mean += distribution.x;
			squared_mean += distribution.y * distribution.y + distribution.x * distribution.x;
		#else
			float depth = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( 0.0, uvOffset ) * radius ) / resolution ).r;
			mean += depth;
			squared_mean += depth * depth;
		#endif
	}
	mean = mean / samples;
	squared_mean = squared_mean / samples;
	float std_dev = sqrt( max( 0.0, squared_mean - mean * mean ) );
	gl_FragColor = vec4( mean, std_dev, 0.0, 1.0 );
}`,wS=[new N(1,0,0),new N(-1,0,0),new N(0,1,0),new N(0,-1,0),new N(0,0,1),new N(0,0,-1)],TS=[new N(0,-1,0),new N(0,-1,0),new N(0,0,1),new N(0,0,-1),new N(0,-1,0),new N(0,-1,0)],dg=new Qt,ia=new N,df=new N;function AS(n,t,e){let i=new Wi,s=new rt,r=new rt,o=new Se,a=new Xl,l=new ql,c={},u=e.maxTextureSize,f={[Qi]:fn,[fn]:Qi,[on]:on},d=new Cn({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new rt},radius:{value:4}},vertexShader:MS,fragmentShader:SS}),h=d.clone();h.defines.HORIZONTAL_PASS=1;let m=new ce;m.setAttribute("position",new Oe(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));let y=new Re(m,d),g=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=Zo;let p=this.type;this.render=function(A,x,T){if(g.enabled===!1||g.autoUpdate===!1&&g.needsUpdate===!1||A.length===0)return;this.type===nm&&(Rt("WebGLShadowMap: PCFSoftShadowMap has been removed. Using PCFShadowMap instead."),this.type=Zo);let D=n.getRenderTarget(),R=n.getActiveCubeFace(),P=n.getActiveMipmapLevel(),F=n.state;F.setBlending(ws),F.buffers.depth.getReversed()===!0?F.buffers.color.setClear(0,0,0,0):F.buffers.color.setClear(1,1,1,1),F.buffers.depth.setTest(!0),F.setScissorTest(!1);let k=p!==this.type;k&&x.traverse(function(I){I.material&&(Array.isArray(I.material)?I.material.forEach(W=>W.needsUpdate=!0):I.material.needsUpdate=!0)});for(let I=0,W=A.length;I<W;I++){let X=A[I],B=X.shadow;if(B===void 0){Rt("WebGLShadowMap:",X,"has no shadow.");continue}if(B.autoUpdate===!1&&B.needsUpdate===!1)continue;s.copy(B.mapSize);let Q=B.getFrameExtents();s.multiply(Q),r.copy(B.mapSize),(s.x>u||s.y>u)&&(s.x>u&&(r.x=Math.floor(u/Q.x),s.x=r.x*Q.x,B.mapSize.x=r.x),s.y>u&&(r.y=Math.floor(u/Q.y),s.y=r.y*Q.y,B.mapSize.y=r.y));let G=n.state.buffers.depth.getReversed();if(B.camera._reversedDepth=G,B.map===null||k===!0){if(B.map!==null&&(B.map.depthTexture!==null&&(B.map.depthTexture.dispose(),B.map.depthTexture=null),B.map.dispose()),this.type===wr){if(X.isPointLight){Rt("WebGLShadowMap: VSM shadow maps are not supported for PointLights. Use PCF or BasicShadowMap instead.");continue}B.map=new An(s.x,s.y,{format:es,type:Kn,minFilter:hn,magFilter:hn,generateMipmaps:!1}),B.map.texture.name=X.name+".shadowMap",B.map.depthTexture=new Ai(s.x,s.y,kn),B.map.depthTexture.name=X.name+".shadowMapDepth",B.map.depthTexture.format=wi,B.map.depthTexture.compareFunction=null,B.map.depthTexture.minFilter=qe,B.map.depthTexture.magFilter=qe}else X.isPointLight?(B.map=new ra(s.x),B.map.depthTexture=new Ro(s.x,Jn)):(B.map=new An(s.x,s.y),B.map.depthTexture=new Ai(s.x,s.y,Jn)),B.map.depthTexture.name=X.name+".shadowMap",B.map.depthTexture.format=wi,this.type===Zo?(B.map.depthTexture.compareFunction=G?Qh:jh,B.map.depthTexture.minFilter=hn,B.map.depthTexture.magFilter=hn):(B.map.depthTexture.compareFunction=null,B.map.depthTexture.minFilter=qe,B.map.depthTexture.magFilter=qe);B.camera.updateProjectionMatrix()}B.map.isWebGLCubeRenderTarget!==!0&&(B.map.width!==s.x||B.map.height!==s.y)&&B.map.setSize(s.x,s.y);let tt=B.map.isWebGLCubeRenderTarget?6:B.getViewportCount();X.isPointLight!==!0&&B.updateMatrices(X,T);let et=(B.camera.layers.mask&4294967294)!==0?B.camera.layers:T.layers;for(let xt=0;xt<tt;xt++){let Dt=B.getCamera(xt);if(X.isPointLight){let Z=B.camera,dt=B.matrix,yt=X.distance||Z.far;yt!==Z.far&&(Z.far=yt,Z.updateProjectionMatrix()),ia.setFromMatrixPosition(X.matrixWorld),Z.position.copy(ia),df.copy(Z.position),df.add(wS[xt]),Z.up.copy(TS[xt]),Z.lookAt(df),Z.updateMatrixWorld(),dt.makeTranslation(-ia.x,-ia.y,-ia.z),dg.multiplyMatrices(Z.projectionMatrix,Z.matrixWorldInverse),B._frustum.setFromProjectionMatrix(dg,Z.coordinateSystem,Z.reversedDepth)}if(B.map.isWebGLCubeRenderTarget)n.setRenderTarget(B.map,xt),n.clear();else{xt===0&&(n.setRenderTarget(B.map),n.clear());let Z=B.getViewport(xt);o.set(r.x*Z.x,r.y*Z.y,r.x*Z.z,r.y*Z.w),F.viewport(o)}i=B.getFrustum(xt),b(x,T,Dt,X,et,this.type)}B.isPointLightShadow!==!0&&this.type===wr&&v(B,T),B.needsUpdate=!1}p=this.type,g.needsUpdate=!1,n.setRenderTarget(D,R,P)};function v(A,x){let T=t.update(y);d.defines.VSM_SAMPLES!==A.blurSamples&&(d.defines.VSM_SAMPLES=A.blurSamples,h.defines.VSM_SAMPLES=A.blurSamples,d.needsUpdate=!0,h.needsUpdate=!0),A.mapPass===null?A.mapPass=new An(s.x,s.y,{format:es,type:Kn}):(A.mapPass.width!==A.map.width||A.mapPass.height!==A.map.height)&&A.mapPass.setSize(A.map.width,A.map.height),d.uniforms.shadow_pass.value=A.map.depthTexture,d.uniforms.resolution.value.set(A.map.width,A.map.height),d.uniforms.radius.value=A.radius,n.setRenderTarget(A.mapPass),n.clear(),n.renderBufferDirect(x,null,T,d,y,null),h.uniforms.shadow_pass.value=A.mapPass.texture,h.uniforms.resolution.value.set(A.map.width,A.map.height),h.uniforms.radius.value=A.radius,n.setRenderTarget(A.map),n.clear(),n.renderBufferDirect(x,null,T,h,y,null)}function M(A,x,T,D){let R=null,P=T.isPointLight===!0?A.customDistanceMaterial:A.customDepthMaterial;if(P!==void 0)R=P;else if(R=T.isPointLight===!0?l:a,n.localClippingEnabled&&x.clipShadows===!0&&Array.isArray(x.clippingPlanes)&&x.clippingPlanes.length!==0||x.displacementMap&&x.displacementScale!==0||x.alphaMap&&x.alphaTest>0||x.map&&x.alphaTest>0||x.alphaToCoverage===!0){let F=R.uuid,k=x.uuid,I=c[F];I===void 0&&(I={},c[F]=I);let W=I[k];W===void 0&&(W=R.clone(),I[k]=W,x.addEventListener("dispose",E)),R=W}if(R.visible=x.visible,R.wireframe=x.wireframe,D===wr?R.side=x.shadowSide!==null?x.shadowSide:x.side:R.side=x.shadowSide!==null?x.shadowSide:f[x.side],R.alphaMap=x.alphaMap,R.alphaTest=x.alphaToCoverage===!0?.5:x.alphaTest,R.map=x.map,R.clipShadows=x.clipShadows,R.clippingPlanes=x.clippingPlanes,R.clipIntersection=x.clipIntersection,R.displacementMap=x.displacementMap,R.displacementScale=x.displacementScale,R.displacementBias=x.displacementBias,R.wireframeLinewidth=x.wireframeLinewidth,R.linewidth=x.linewidth,T.isPointLight===!0&&R.isMeshDistanceMaterial===!0){let F=n.properties.get(R);F.light=T}return R}function b(A,x,T,D,R,P){if(A.visible===!1)return;if(A.layers.test(R)&&(A.isMesh||A.isLine||A.isPoints)&&(A.castShadow||A.receiveShadow&&P===wr)&&(!A.frustumCulled||A.intersectsFrustum(i))){A.modelViewMatrix.multiplyMatrices(T.matrixWorldInverse,A.matrixWorld);let I=t.update(A),W=A.material;if(Array.isArray(W)){let X=I.groups;for(let B=0,Q=X.length;B<Q;B++){let G=X[B],tt=W[G.materialIndex];if(tt&&tt.visible){let et=M(A,tt,D,P);A.onBeforeShadow(n,A,x,T,I,et,G),n.renderBufferDirect(T,null,I,et,A,G),A.onAfterShadow(n,A,x,T,I,et,G)}}}else if(W.visible){let X=M(A,W,D,P);A.onBeforeShadow(n,A,x,T,I,X,null),n.renderBufferDirect(T,null,I,X,A,null),A.onAfterShadow(n,A,x,T,I,X,null)}}let k=A.children;for(let I=0,W=k.length;I<W;I++)b(k[I],x,T,D,R,P)}function E(A){A.target.removeEventListener("dispose",E);for(let T in c){let D=c[T],R=A.target.uuid;R in D&&(D[R].dispose(),delete D[R])}}}function ES(n,t){function e(){let L=!1,K=new Se,Y=null,ct=new Se(0,0,0,0);return{setMask:function(st){Y!==st&&!L&&(n.colorMask(st,st,st,st),Y=st)},setLocked:function(st){L=st},setClear:function(st,at,At,Gt,it){it===!0&&(st*=Gt,at*=Gt,At*=Gt),K.set(st,at,At,Gt),ct.equals(K)===!1&&(n.clearColor(st,at,At,Gt),ct.copy(K))},reset:function(){L=!1,Y=null,ct.set(-1,0,0,0)}}}function i(){let L=!1,K=!1,Y=null,ct=null,st=null;return{setReversed:function(at){if(K!==at){let At=t.get("EXT_clip_control");at?At.clipControlEXT(At.LOWER_LEFT_EXT,At.ZERO_TO_ONE_EXT):At.clipControlEXT(At.LOWER_LEFT_EXT,At.NEGATIVE_ONE_TO_ONE_EXT),K=at;let Gt=st;st=null,this.setClear(Gt)}},getReversed:function(){return K},setTest:function(at){at?mt(n.DEPTH_TEST):Ut(n.DEPTH_TEST)},setMask:function(at){Y!==at&&!L&&(n.depthMask(at),Y=at)},setFunc:function(at){if(K&&(at=Fm[at]),ct!==at){switch(at){case bl:n.depthFunc(n.NEVER);break;case Ml:n.depthFunc(n.ALWAYS);break;case Sl:n.depthFunc(n.LESS);break;case hr:n.depthFunc(n.LEQUAL);break;case wl:n.depthFunc(n.EQUAL);break;case Tl:n.depthFunc(n.GEQUAL);break;case Al:n.depthFunc(n.GREATER);break;case El:n.depthFunc(n.NOTEQUAL);break;default:n.depthFunc(n.LEQUAL)}ct=at}},setLocked:function(at){L=at},setClear:function(at){st!==at&&(st=at,K&&(at=1-at),n.clearDepth(at))},reset:function(){L=!1,Y=null,ct=null,st=null,K=!1}}}function s(){let L=!1,K=null,Y=null,ct=null,st=null,at=null,At=null,Gt=null,it=null;return{setTest:function(Ct){L||(Ct?mt(n.STENCIL_TEST):Ut(n.STENCIL_TEST))},setMask:function(Ct){K!==Ct&&!L&&(n.stencilMask(Ct),K=Ct)},setFunc:function(Ct,zt,gt){(Y!==Ct||ct!==zt||st!==gt)&&(n.stencilFunc(Ct,zt,gt),Y=Ct,ct=zt,st=gt)},setOp:function(Ct,zt,gt){(at!==Ct||At!==zt||Gt!==gt)&&(n.stencilOp(Ct,zt,gt),at=Ct,At=zt,Gt=gt)},setLocked:function(Ct){L=Ct},setClear:function(Ct){it!==Ct&&(n.clearStencil(Ct),it=Ct)},reset:function(){L=!1,K=null,Y=null,ct=null,st=null,at=null,At=null,Gt=null,it=null}}}let r=new e,o=new i,a=new s,l={},c=new WeakMap,u={},f={},d={},h=new WeakMap,m=[],y=null,g=!1,p=null,v=null,M=null,b=null,E=null,A=null,x=null,T=new kt(0,0,0),D=0,R=!1,P=null,F=null,k=null,I=null,W=null,X=n.getParameter(n.MAX_COMBINED_TEXTURE_IMAGE_UNITS),B=!1,Q=0,G=n.getParameter(n.VERSION);G.indexOf("WebGL")!==-1?(Q=parseFloat(/^WebGL (\d)/.exec(G)[1]),B=Q>=1):G.indexOf("OpenGL ES")!==-1&&(Q=parseFloat(/^OpenGL ES (\d)/.exec(G)[1]),B=Q>=2);let tt=null,et={},xt=n.getParameter(n.SCISSOR_BOX),Dt=n.getParameter(n.VIEWPORT),Z=new Se().fromArray(xt),dt=new Se().fromArray(Dt);function yt(L,K,Y,ct){let st=new Uint8Array(4),at=n.createTexture();n.bindTexture(L,at),n.texParameteri(L,n.TEXTURE_MIN_FILTER,n.NEAREST),n.texParameteri(L,n.TEXTURE_MAG_FILTER,n.NEAREST);for(let At=0;At<Y;At++)L===n.TEXTURE_3D||L===n.TEXTURE_2D_ARRAY?n.texImage3D(K,0,n.RGBA,1,1,ct,0,n.RGBA,n.UNSIGNED_BYTE,st):n.texImage2D(K+At,0,n.RGBA,1,1,0,n.RGBA,n.UNSIGNED_BYTE,st);return at}let Et={};Et[n.TEXTURE_2D]=yt(n.TEXTURE_2D,n.TEXTURE_2D,1),Et[n.TEXTURE_CUBE_MAP]=yt(n.TEXTURE_CUBE_MAP,n.TEXTURE_CUBE_MAP_POSITIVE_X,6),Et[n.TEXTURE_2D_ARRAY]=yt(n.TEXTURE_2D_ARRAY,n.TEXTURE_2D_ARRAY,1,1),Et[n.TEXTURE_3D]=yt(n.TEXTURE_3D,n.TEXTURE_3D,1,1),r.setClear(0,0,0,1),o.setClear(1),a.setClear(0),mt(n.DEPTH_TEST),o.setFunc(hr),dn(!1),we(Lh),mt(n.CULL_FACE),Ze(ws);function mt(L){u[L]!==!0&&(n.enable(L),u[L]=!0)}function Ut(L){u[L]!==!1&&(n.disable(L),u[L]=!1)}function Ee(L,K){return d[L]!==K?(n.bindFramebuffer(L,K),d[L]=K,L===n.DRAW_FRAMEBUFFER&&(d[n.FRAMEBUFFER]=K),L===n.FRAMEBUFFER&&(d[n.DRAW_FRAMEBUFFER]=K),!0):!1}function Pt(L,K){let Y=m,ct=!1;if(L){Y=h.get(K),Y===void 0&&(Y=[],h.set(K,Y));let st=L.textures;if(Y.length!==st.length||Y[0]!==n.COLOR_ATTACHMENT0){for(let at=0,At=st.length;at<At;at++)Y[at]=n.COLOR_ATTACHMENT0+at;Y.length=st.length,ct=!0}}else Y[0]!==n.BACK&&(Y[0]=n.BACK,ct=!0);ct&&n.drawBuffers(Y)}function te(L){return y!==L?(n.useProgram(L),y=L,!0):!1}let oe={[Ts]:n.FUNC_ADD,[sm]:n.FUNC_SUBTRACT,[rm]:n.FUNC_REVERSE_SUBTRACT};oe[om]=n.MIN,oe[am]=n.MAX;let qt={[lm]:n.ZERO,[cm]:n.ONE,[um]:n.SRC_COLOR,[Fh]:n.SRC_ALPHA,[gm]:n.SRC_ALPHA_SATURATE,[pm]:n.DST_COLOR,[fm]:n.DST_ALPHA,[hm]:n.ONE_MINUS_SRC_COLOR,[Oh]:n.ONE_MINUS_SRC_ALPHA,[mm]:n.ONE_MINUS_DST_COLOR,[dm]:n.ONE_MINUS_DST_ALPHA,[_m]:n.CONSTANT_COLOR,[vm]:n.ONE_MINUS_CONSTANT_COLOR,[ym]:n.CONSTANT_ALPHA,[xm]:n.ONE_MINUS_CONSTANT_ALPHA};function Ze(L,K,Y,ct,st,at,At,Gt,it,Ct){if(L===ws){g===!0&&(Ut(n.BLEND),g=!1);return}if(g===!1&&(mt(n.BLEND),g=!0),L!==im){if(L!==p||Ct!==R){if((v!==Ts||E!==Ts)&&(n.blendEquation(n.FUNC_ADD),v=Ts,E=Ts),Ct)switch(L){case Tr:n.blendFuncSeparate(n.ONE,n.ONE_MINUS_SRC_ALPHA,n.ONE,n.ONE_MINUS_SRC_ALPHA);break;case ts:n.blendFunc(n.ONE,n.ONE);break;case Nh:n.blendFuncSeparate(n.ZERO,n.ONE_MINUS_SRC_COLOR,n.ZERO,n.ONE);break;case Uh:n.blendFuncSeparate(n.DST_COLOR,n.ONE_MINUS_SRC_ALPHA,n.ZERO,n.ONE);break;default:Nt("WebGLState: Invalid blending: ",L);break}else switch(L){case Tr:n.blendFuncSeparate(n.SRC_ALPHA,n.ONE_MINUS_SRC_ALPHA,n.ONE,n.ONE_MINUS_SRC_ALPHA);break;case ts:n.blendFuncSeparate(n.SRC_ALPHA,n.ONE,n.ONE,n.ONE);break;case Nh:Nt("WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case Uh:Nt("WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:Nt("WebGLState: Invalid blending: ",L);break}M=null,b=null,A=null,x=null,T.set(0,0,0),D=0,p=L,R=Ct}return}st=st||K,at=at||Y,At=At||ct,(K!==v||st!==E)&&(n.blendEquationSeparate(oe[K],oe[st]),v=K,E=st),(Y!==M||ct!==b||at!==A||At!==x)&&(n.blendFuncSeparate(qt[Y],qt[ct],qt[at],qt[At]),M=Y,b=ct,A=at,x=At),(Gt.equals(T)===!1||it!==D)&&(n.blendColor(Gt.r,Gt.g,Gt.b,it),T.copy(Gt),D=it),p=L,R=!1}function Le(L,K){L.side===on?Ut(n.CULL_FACE):mt(n.CULL_FACE);let Y=L.side===fn;K&&(Y=!Y),dn(Y),L.blending===Tr&&L.transparent===!1?Ze(ws):Ze(L.blending,L.blendEquation,L.blendSrc,L.blendDst,L.blendEquationAlpha,L.blendSrcAlpha,L.blendDstAlpha,L.blendColor,L.blendAlpha,L.premultipliedAlpha),o.setFunc(L.depthFunc),o.setTest(L.depthTest),o.setMask(L.depthWrite),r.setMask(L.colorWrite);let ct=L.stencilWrite;a.setTest(ct),ct&&(a.setMask(L.stencilWriteMask),a.setFunc(L.stencilFunc,L.stencilRef,L.stencilFuncMask),a.setOp(L.stencilFail,L.stencilZFail,L.stencilZPass)),Ge(L.polygonOffset,L.polygonOffsetFactor,L.polygonOffsetUnits),L.alphaToCoverage===!0?mt(n.SAMPLE_ALPHA_TO_COVERAGE):Ut(n.SAMPLE_ALPHA_TO_COVERAGE)}function dn(L){P!==L&&(L?n.frontFace(n.CW):n.frontFace(n.CCW),P=L)}function we(L){L!==tm?(mt(n.CULL_FACE),L!==F&&(L===Lh?n.cullFace(n.BACK):L===em?n.cullFace(n.FRONT):n.cullFace(n.FRONT_AND_BACK))):Ut(n.CULL_FACE),F=L}function Qn(L){L!==k&&(B&&n.lineWidth(L),k=L)}function Ge(L,K,Y){L?(mt(n.POLYGON_OFFSET_FILL),(I!==K||W!==Y)&&(I=K,W=Y,o.getReversed()&&(K=-K,Y=-Y),n.polygonOffset(K,Y))):Ut(n.POLYGON_OFFSET_FILL)}function Pn(L){L?mt(n.SCISSOR_TEST):Ut(n.SCISSOR_TEST)}function In(L){L===void 0&&(L=n.TEXTURE0+X-1),tt!==L&&(n.activeTexture(L),tt=L)}function Dn(L,K,Y){Y===void 0&&(tt===null?Y=n.TEXTURE0+X-1:Y=tt);let ct=et[Y];ct===void 0&&(ct={type:void 0,texture:void 0},et[Y]=ct),(ct.type!==L||ct.texture!==K)&&(tt!==Y&&(n.activeTexture(Y),tt=Y),n.bindTexture(L,K||Et[L]),ct.type=L,ct.texture=K)}function O(){let L=et[tt];L!==void 0&&L.type!==void 0&&(n.bindTexture(L.type,null),L.type=void 0,L.texture=void 0)}function Ln(){try{n.compressedTexImage2D(...arguments)}catch(L){Nt("WebGLState:",L)}}function ve(){try{n.compressedTexImage3D(...arguments)}catch(L){Nt("WebGLState:",L)}}function ye(){try{n.texSubImage2D(...arguments)}catch(L){Nt("WebGLState:",L)}}function pt(){try{n.texSubImage3D(...arguments)}catch(L){Nt("WebGLState:",L)}}function Ne(){try{n.compressedTexSubImage2D(...arguments)}catch(L){Nt("WebGLState:",L)}}function Lt(){try{n.compressedTexSubImage3D(...arguments)}catch(L){Nt("WebGLState:",L)}}function Ot(){try{n.texStorage2D(...arguments)}catch(L){Nt("WebGLState:",L)}}function C(){try{n.texStorage3D(...arguments)}catch(L){Nt("WebGLState:",L)}}function S(){try{n.texImage2D(...arguments)}catch(L){Nt("WebGLState:",L)}}function V(){try{n.texImage3D(...arguments)}catch(L){Nt("WebGLState:",L)}}function nt(L){return f[L]!==void 0?f[L]:n.getParameter(L)}function j(L,K){f[L]!==K&&(n.pixelStorei(L,K),f[L]=K)}function ot(L){Z.equals(L)===!1&&(n.scissor(L.x,L.y,L.z,L.w),Z.copy(L))}function ht(L){dt.equals(L)===!1&&(n.viewport(L.x,L.y,L.z,L.w),dt.copy(L))}function $(L,K){let Y=c.get(K);Y===void 0&&(Y=new WeakMap,c.set(K,Y));let ct=Y.get(L);ct===void 0&&(ct=n.getUniformBlockIndex(K,L.name),n.uniformBlockBinding(K,ct,ct),Y.set(L,ct))}function J(L,K,Y){let st=c.get(K).get(L);l[st]!==Y&&(n.bindBufferBase(n.UNIFORM_BUFFER,st,Y),l[st]=Y)}function lt(){n.disable(n.BLEND),n.disable(n.CULL_FACE),n.disable(n.DEPTH_TEST),n.disable(n.POLYGON_OFFSET_FILL),n.disable(n.SCISSOR_TEST),n.disable(n.STENCIL_TEST),n.disable(n.SAMPLE_ALPHA_TO_COVERAGE),n.blendEquation(n.FUNC_ADD),n.blendFunc(n.ONE,n.ZERO),n.blendFuncSeparate(n.ONE,n.ZERO,n.ONE,n.ZERO),n.blendColor(0,0,0,0),n.colorMask(!0,!0,!0,!0),n.clearColor(0,0,0,0),n.depthMask(!0),n.depthFunc(n.LESS),o.setReversed(!1),n.clearDepth(1),n.stencilMask(4294967295),n.stencilFunc(n.ALWAYS,0,4294967295),n.stencilOp(n.KEEP,n.KEEP,n.KEEP),n.clearStencil(0),n.cullFace(n.BACK),n.frontFace(n.CCW),n.polygonOffset(0,0),n.activeTexture(n.TEXTURE0),n.bindFramebuffer(n.FRAMEBUFFER,null),n.bindFramebuffer(n.DRAW_FRAMEBUFFER,null),n.bindFramebuffer(n.READ_FRAMEBUFFER,null),n.useProgram(null),n.lineWidth(1),n.scissor(0,0,n.canvas.width,n.canvas.height),n.viewport(0,0,n.canvas.width,n.canvas.height),n.pixelStorei(n.PACK_ALIGNMENT,4),n.pixelStorei(n.UNPACK_ALIGNMENT,4),n.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,!1),n.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,!1),n.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,n.BROWSER_DEFAULT_WEBGL),n.pixelStorei(n.PACK_ROW_LENGTH,0),n.pixelStorei(n.PACK_SKIP_PIXELS,0),n.pixelStorei(n.PACK_SKIP_ROWS,0),n.pixelStorei(n.UNPACK_ROW_LENGTH,0),n.pixelStorei(n.UNPACK_IMAGE_HEIGHT,0),n.pixelStorei(n.UNPACK_SKIP_PIXELS,0),n.pixelStorei(n.UNPACK_SKIP_ROWS,0),n.pixelStorei(n.UNPACK_SKIP_IMAGES,0),u={},f={},tt=null,et={},d={},l={},h=new WeakMap,m=[],y=null,g=!1,p=null,v=null,M=null,b=null,E=null,A=null,x=null,T=new kt(0,0,0),D=0,R=!1,P=null,F=null,k=null,I=null,W=null,Z.set(0,0,n.canvas.width,n.canvas.height),dt.set(0,0,n.canvas.width,n.canvas.height),r.reset(),o.reset(),a.reset()}return{buffers:{color:r,depth:o,stencil:a},enable:mt,disable:Ut,bindFramebuffer:Ee,drawBuffers:Pt,useProgram:te,setBlending:Ze,setMaterial:Le,setFlipSided:dn,setCullFace:we,setLineWidth:Qn,setPolygonOffset:Ge,setScissorTest:Pn,activeTexture:In,bindTexture:Dn,unbindTexture:O,compressedTexImage2D:Ln,compressedTexImage3D:ve,texImage2D:S,texImage3D:V,pixelStorei:j,getParameter:nt,updateUBOMapping:$,uniformBlockBinding:J,texStorage2D:Ot,texStorage3D:C,texSubImage2D:ye,texSubImage3D:pt,compressedTexSubImage2D:Ne,compressedTexSubImage3D:Lt,scissor:ot,viewport:ht,reset:lt}}function CS(n,t,e,i,s,r,o){let a=t.has("WEBGL_multisampled_render_to_texture")?t.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),c=new rt,u=new WeakMap,f=new Set,d,h=new WeakMap,m=new Set,y=new FinalizationRegistry(C=>m.delete(C)),g=!1;try{g=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function p(C,S){return g?new OffscreenCanvas(C,S):yo("canvas")}function v(C,S,V){let nt=1,j=Ot(C);if((j.width>V||j.height>V)&&(nt=V/Math.max(j.width,j.height)),nt<1)if(typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&C instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&C instanceof ImageBitmap||typeof VideoFrame<"u"&&C instanceof VideoFrame){let ot=Math.floor(nt*j.width),ht=Math.floor(nt*j.height);d===void 0&&(d=p(ot,ht));let $=S?p(ot,ht):d;return $.width=ot,$.height=ht,$.getContext("2d").drawImage(C,0,0,ot,ht),Rt("WebGLRenderer: Texture has been resized from ("+j.width+"x"+j.height+") to ("+ot+"x"+ht+")."),$}else return"data"in C&&Rt("WebGLRenderer: Image in DataTexture is too big ("+j.width+"x"+j.height+")."),C;return C}function M(C){return C.generateMipmaps}function b(C){n.generateMipmap(C)}function E(C){return C.isWebGLCubeRenderTarget?n.TEXTURE_CUBE_MAP:C.isWebGL3DRenderTarget?n.TEXTURE_3D:C.isWebGLArrayRenderTarget||C.isCompressedArrayTexture?n.TEXTURE_2D_ARRAY:n.TEXTURE_2D}function A(C,S,V,nt,j,ot=!1){if(C!==null){if(n[C]!==void 0)return n[C];Rt("WebGLRenderer: Attempt to use non-existing WebGL internal format '"+C+"'")}let ht;nt&&(ht=t.get("EXT_texture_norm16"),ht||Rt("WebGLRenderer: Unable to use normalized textures without EXT_texture_norm16 extension"));let $=S;if(S===n.RED&&(V===n.FLOAT&&($=n.R32F),V===n.HALF_FLOAT&&($=n.R16F),V===n.UNSIGNED_BYTE&&($=n.R8),V===n.UNSIGNED_SHORT&&ht&&($=ht.R16_EXT),V===n.SHORT&&ht&&($=ht.R16_SNORM_EXT)),S===n.RED_INTEGER&&(V===n.UNSIGNED_BYTE&&($=n.R8UI),V===n.UNSIGNED_SHORT&&($=n.R16UI),V===n.UNSIGNED_INT&&($=n.R32UI),V===n.BYTE&&($=n.R8I),V===n.SHORT&&($=n.R16I),V===n.INT&&($=n.R32I)),S===n.RG&&(V===n.FLOAT&&($=n.RG32F),V===n.HALF_FLOAT&&($=n.RG16F),V===n.UNSIGNED_BYTE&&($=n.RG8),V===n.UNSIGNED_SHORT&&ht&&($=ht.RG16_EXT),V===n.SHORT&&ht&&($=ht.RG16_SNORM_EXT)),S===n.RG_INTEGER&&(V===n.UNSIGNED_BYTE&&($=n.RG8UI),V===n.UNSIGNED_SHORT&&($=n.RG16UI),V===n.UNSIGNED_INT&&($=n.RG32UI),V===n.BYTE&&($=n.RG8I),V===n.SHORT&&($=n.RG16I),V===n.INT&&($=n.RG32I)),S===n.RGB_INTEGER&&(V===n.UNSIGNED_BYTE&&($=n.RGB8UI),V===n.UNSIGNED_SHORT&&($=n.RGB16UI),V===n.UNSIGNED_INT&&($=n.RGB32UI),V===n.BYTE&&($=n.RGB8I),V===n.SHORT&&($=n.RGB16I),V===n.INT&&($=n.RGB32I)),S===n.RGBA_INTEGER&&(V===n.UNSIGNED_BYTE&&($=n.RGBA8UI),V===n.UNSIGNED_SHORT&&($=n.RGBA16UI),V===n.UNSIGNED_INT&&($=n.RGBA32UI),V===n.BYTE&&($=n.RGBA8I),V===n.SHORT&&($=n.RGBA16I),V===n.INT&&($=n.RGBA32I)),S===n.RGB&&(V===n.UNSIGNED_SHORT&&ht&&($=ht.RGB16_EXT),V===n.SHORT&&ht&&($=ht.RGB16_SNORM_EXT),V===n.UNSIGNED_INT_5_9_9_9_REV&&($=n.RGB9_E5),V===n.UNSIGNED_INT_10F_11F_11F_REV&&($=n.R11F_G11F_B10F)),S===n.RGBA){let J=ot?vo:Jt.getTransfer(j);V===n.FLOAT&&($=n.RGBA32F),V===n.HALF_FLOAT&&($=n.RGBA16F),V===n.UNSIGNED_BYTE&&($=J===ae?n.SRGB8_ALPHA8:n.RGBA8),V===n.UNSIGNED_SHORT&&ht&&($=ht.RGBA16_EXT),V===n.SHORT&&ht&&($=ht.RGBA16_SNORM_EXT),V===n.UNSIGNED_SHORT_4_4_4_4&&($=n.RGBA4),V===n.UNSIGNED_SHORT_5_5_5_1&&($=n.RGB5_A1)}return($===n.R16F||$===n.R32F||$===n.RG16F||$===n.RG32F||$===n.RGBA16F||$===n.RGBA32F)&&t.get("EXT_color_buffer_float"),$}function x(C,S){let V;return C?S===null||S===Jn||S===Es?V=n.DEPTH24_STENCIL8:S===kn?V=n.DEPTH32F_STENCIL8:S===Er&&(V=n.DEPTH24_STENCIL8,Rt("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):S===null||S===Jn||S===Es?V=n.DEPTH_COMPONENT24:S===kn?V=n.DEPTH_COMPONENT32F:S===Er&&(V=n.DEPTH_COMPONENT16),V}function T(C,S){return M(C)===!0||C.isFramebufferTexture&&C.minFilter!==qe&&C.minFilter!==hn?Math.log2(Math.max(S.width,S.height))+1:C.mipmaps.length>0?C.mipmaps.length:C.isCompressedTexture&&Array.isArray(C.image)?S.mipmaps.length:1}function D(C){let S=new WeakRef(C);i.get(C).__ref=S,m.add(S),y.register(C,S,S)}function R(C){let S=i.get(C).__ref;S!==void 0&&(m.delete(S),y.unregister(S))}function P(C){k(C.target)}function F(C){I(C.target)}function k(C){C.removeEventListener("dispose",P),R(C),X(C),C.isVideoTexture&&u.delete(C),C.isHTMLTexture&&f.delete(C)}function I(C){C.removeEventListener("dispose",F),R(C),Q(C)}function W(){for(let C of m){let S=C.deref();S!==void 0&&(S.isRenderTarget===!0?I(S):k(S))}m.clear(),f.clear()}function X(C){let S=i.get(C);if(S.__webglInit===void 0)return;let V=C.source,nt=h.get(V);if(nt){let j=nt[S.__cacheKey];j.usedTimes--,j.usedTimes===0&&B(C),Object.keys(nt).length===0&&h.delete(V)}i.remove(C)}function B(C){let S=i.get(C);n.deleteTexture(S.__webglTexture);let V=C.source,nt=h.get(V);delete nt[S.__cacheKey],o.memory.textures--}function Q(C){let S=i.get(C);S.__depthDisposeCallback&&S.__depthDisposeCallback();let V=C.depthTexture;if(V&&V.renderTarget===C&&k(V),C.isWebGLCubeRenderTarget)for(let j=0;j<6;j++){if(Array.isArray(S.__webglFramebuffer[j]))for(let ot=0;ot<S.__webglFramebuffer[j].length;ot++)n.deleteFramebuffer(S.__webglFramebuffer[j][ot]);else n.deleteFramebuffer(S.__webglFramebuffer[j]);S.__webglDepthbuffer&&n.deleteRenderbuffer(S.__webglDepthbuffer[j])}else{if(Array.isArray(S.__webglFramebuffer))for(let j=0;j<S.__webglFramebuffer.length;j++)n.deleteFramebuffer(S.__webglFramebuffer[j]);else n.deleteFramebuffer(S.__webglFramebuffer);if(S.__webglDepthbuffer&&n.deleteRenderbuffer(S.__webglDepthbuffer),S.__webglMultisampledFramebuffer&&n.deleteFramebuffer(S.__webglMultisampledFramebuffer),S.__webglColorRenderbuffer)for(let j=0;j<S.__webglColorRenderbuffer.length;j++)S.__webglColorRenderbuffer[j]&&n.deleteRenderbuffer(S.__webglColorRenderbuffer[j]);S.__webglDepthRenderbuffer&&n.deleteRenderbuffer(S.__webglDepthRenderbuffer)}let nt=C.textures;for(let j=0,ot=nt.length;j<ot;j++){let ht=i.get(nt[j]);ht.__webglTexture&&(n.deleteTexture(ht.__webglTexture),o.memory.textures--),i.remove(nt[j])}i.remove(C)}let G=0;function tt(){G=0}function et(){return G}function xt(C){G=C}function Dt(){let C=G;return C>=s.maxTextures&&Rt("WebGLTextures: Trying to use "+(C+1)+" texture units while this GPU supports only "+s.maxTextures),G+=1,C}function Z(C){let S=[];return S.push(C.wrapS),S.push(C.wrapT),S.push(C.wrapR||0),S.push(C.magFilter),S.push(C.minFilter),S.push(C.anisotropy),S.push(C.internalFormat),S.push(C.format),S.push(C.type),S.push(C.generateMipmaps),S.push(C.mipmapsAutoUpdate),S.push(C.premultiplyAlpha),S.push(C.flipY),S.push(C.unpackAlignment),S.push(C.colorSpace),S.join()}function dt(C,S){let V=i.get(C);if(C.isVideoTexture&&Ne(C),C.isRenderTargetTexture===!1&&C.isExternalTexture!==!0&&C.version>0&&V.__version!==C.version){let nt=C.image;if(nt===null)Rt("WebGLRenderer: Texture marked for update but no image data found.");else if(nt.complete===!1)Rt("WebGLRenderer: Texture marked for update but image is incomplete");else{Le(V,C,S);return}}else C.isExternalTexture&&(V.__webglTexture=C.sourceTexture?C.sourceTexture:null);e.bindTexture(n.TEXTURE_2D,V.__webglTexture,n.TEXTURE0+S)}function yt(C,S){let V=i.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&V.__version!==C.version){Le(V,C,S);return}else C.isExternalTexture&&(V.__webglTexture=C.sourceTexture?C.sourceTexture:null);e.bindTexture(n.TEXTURE_2D_ARRAY,V.__webglTexture,n.TEXTURE0+S)}function Et(C,S){let V=i.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&V.__version!==C.version){Le(V,C,S);return}e.bindTexture(n.TEXTURE_3D,V.__webglTexture,n.TEXTURE0+S)}function mt(C,S){let V=i.get(C);if(C.version>0&&V.__version!==C.version){dn(V,C,S);return}e.bindTexture(n.TEXTURE_CUBE_MAP,V.__webglTexture,n.TEXTURE0+S)}let Ut={[Cl]:n.REPEAT,[si]:n.CLAMP_TO_EDGE,[Rl]:n.MIRRORED_REPEAT},Ee={[qe]:n.NEAREST,[Sm]:n.NEAREST_MIPMAP_NEAREST,[Jo]:n.NEAREST_MIPMAP_LINEAR,[hn]:n.LINEAR,[lc]:n.LINEAR_MIPMAP_NEAREST,[Ci]:n.LINEAR_MIPMAP_LINEAR},Pt={[Em]:n.NEVER,[tf]:n.ALWAYS,[Cm]:n.LESS,[jh]:n.LEQUAL,[Rm]:n.EQUAL,[Qh]:n.GEQUAL,[Pm]:n.GREATER,[Im]:n.NOTEQUAL};function te(C,S){if(S.type===kn&&t.has("OES_texture_float_linear")===!1&&(S.magFilter===hn||S.magFilter===lc||S.magFilter===Jo||S.magFilter===Ci||S.minFilter===hn||S.minFilter===lc||S.minFilter===Jo||S.minFilter===Ci)&&Rt("WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),n.texParameteri(C,n.TEXTURE_WRAP_S,Ut[S.wrapS]),n.texParameteri(C,n.TEXTURE_WRAP_T,Ut[S.wrapT]),(C===n.TEXTURE_3D||C===n.TEXTURE_2D_ARRAY)&&n.texParameteri(C,n.TEXTURE_WRAP_R,Ut[S.wrapR]),n.texParameteri(C,n.TEXTURE_MAG_FILTER,Ee[S.magFilter]),n.texParameteri(C,n.TEXTURE_MIN_FILTER,Ee[S.minFilter]),S.compareFunction&&(n.texParameteri(C,n.TEXTURE_COMPARE_MODE,n.COMPARE_REF_TO_TEXTURE),n.texParameteri(C,n.TEXTURE_COMPARE_FUNC,Pt[S.compareFunction])),t.has("EXT_texture_filter_anisotropic")===!0){if(S.magFilter===qe||S.minFilter!==Jo&&S.minFilter!==Ci||S.type===kn&&t.has("OES_texture_float_linear")===!1)return;if(S.anisotropy>1||i.get(S).__currentAnisotropy){let V=t.get("EXT_texture_filter_anisotropic");n.texParameterf(C,V.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(S.anisotropy,s.getMaxAnisotropy())),i.get(S).__currentAnisotropy=S.anisotropy}}}function oe(C,S){let V=!1;C.__webglInit===void 0&&(C.__webglInit=!0,S.addEventListener("dispose",P),D(S));let nt=S.source,j=h.get(nt);j===void 0&&(j={},h.set(nt,j));let ot=Z(S);if(ot!==C.__cacheKey){j[ot]===void 0&&(j[ot]={texture:n.createTexture(),usedTimes:0},o.memory.textures++,V=!0),j[ot].usedTimes++;let ht=j[C.__cacheKey];ht!==void 0&&(j[C.__cacheKey].usedTimes--,ht.usedTimes===0&&B(S)),C.__cacheKey=ot,C.__webglTexture=j[ot].texture}return V}function qt(C,S,V){return Math.floor(Math.floor(C/V)/S)}function Ze(C,S,V,nt){let ot=C.updateRanges;if(ot.length===0)e.texSubImage2D(n.TEXTURE_2D,0,0,0,S.width,S.height,V,nt,S.data);else{ot.sort((L,K)=>L.start-K.start);let ht=0;for(let L=1;L<ot.length;L++){let K=ot[ht],Y=ot[L],ct=K.start+K.count,st=qt(Y.start,S.width,4),at=qt(K.start,S.width,4);Y.start<=ct+1&&st===at&&qt(Y.start+Y.count-1,S.width,4)===st?K.count=Math.max(K.count,Y.start+Y.count-K.start):(++ht,ot[ht]=Y)}ot.length=ht+1;let $=e.getParameter(n.UNPACK_ROW_LENGTH),J=e.getParameter(n.UNPACK_SKIP_PIXELS),lt=e.getParameter(n.UNPACK_SKIP_ROWS);e.pixelStorei(n.UNPACK_ROW_LENGTH,S.width);for(let L=0,K=ot.length;L<K;L++){let Y=ot[L],ct=Math.floor(Y.start/4),st=Math.ceil(Y.count/4),at=ct%S.width,At=Math.floor(ct/S.width),Gt=st,it=1;e.pixelStorei(n.UNPACK_SKIP_PIXELS,at),e.pixelStorei(n.UNPACK_SKIP_ROWS,At),e.texSubImage2D(n.TEXTURE_2D,0,at,At,Gt,it,V,nt,S.data)}C.clearUpdateRanges(),e.pixelStorei(n.UNPACK_ROW_LENGTH,$),e.pixelStorei(n.UNPACK_SKIP_PIXELS,J),e.pixelStorei(n.UNPACK_SKIP_ROWS,lt)}}function Le(C,S,V){let nt=n.TEXTURE_2D;(S.isDataArrayTexture||S.isCompressedArrayTexture)&&(nt=n.TEXTURE_2D_ARRAY),S.isData3DTexture&&(nt=n.TEXTURE_3D);let j=oe(C,S),ot=S.source;e.bindTexture(nt,C.__webglTexture,n.TEXTURE0+V);let ht=i.get(ot);if(ot.version!==ht.__version||j===!0){if(e.activeTexture(n.TEXTURE0+V),(typeof ImageBitmap<"u"&&S.image instanceof ImageBitmap)===!1){let it=Jt.getPrimaries(Jt.workingColorSpace),Ct=S.colorSpace===Pi?null:Jt.getPrimaries(S.colorSpace),zt=S.colorSpace===Pi||it===Ct?n.NONE:n.BROWSER_DEFAULT_WEBGL;e.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,S.flipY),e.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,S.premultiplyAlpha),e.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,zt)}e.pixelStorei(n.UNPACK_ALIGNMENT,S.unpackAlignment);let J=v(S.image,!1,s.maxTextureSize);J=Lt(S,J);let lt=r.convert(S.format,S.colorSpace),L=r.convert(S.type),K=A(S.internalFormat,lt,L,S.normalized,S.colorSpace,S.isVideoTexture);te(nt,S);let Y,ct=S.mipmaps,st=S.isVideoTexture!==!0,at=ht.__version===void 0||j===!0,At=ot.dataReady,Gt=T(S,J);if(S.isDepthTexture)K=x(S.format===Ri,S.type),at&&(st?e.texStorage2D(n.TEXTURE_2D,1,K,J.width,J.height):e.texImage2D(n.TEXTURE_2D,0,K,J.width,J.height,0,lt,L,null));else if(S.isDataTexture)if(ct.length>0){st&&at&&e.texStorage2D(n.TEXTURE_2D,Gt,K,ct[0].width,ct[0].height);for(let it=0,Ct=ct.length;it<Ct;it++)Y=ct[it],st?At&&e.texSubImage2D(n.TEXTURE_2D,it,0,0,Y.width,Y.height,lt,L,Y.data):e.texImage2D(n.TEXTURE_2D,it,K,Y.width,Y.height,0,lt,L,Y.data);S.generateMipmaps=!1}else st?(at&&e.texStorage2D(n.TEXTURE_2D,Gt,K,J.width,J.height),At&&Ze(S,J,lt,L)):e.texImage2D(n.TEXTURE_2D,0,K,J.width,J.height,0,lt,L,J.data);else if(S.isCompressedTexture)if(S.isCompressedArrayTexture){st&&at&&e.texStorage3D(n.TEXTURE_2D_ARRAY,Gt,K,ct[0].width,ct[0].height,J.depth);for(let it=0,Ct=ct.length;it<Ct;it++)if(Y=ct[it],S.format!==jn)if(lt!==null)if(st){if(At)if(S.layerUpdates.size>0){let zt=hf(Y.width,Y.height,S.format,S.type);for(let gt of S.layerUpdates){let le=Y.data.subarray(gt*zt/Y.data.BYTES_PER_ELEMENT,(gt+1)*zt/Y.data.BYTES_PER_ELEMENT);e.compressedTexSubImage3D(n.TEXTURE_2D_ARRAY,it,0,0,gt,Y.width,Y.height,1,lt,le)}}else e.compressedTexSubImage3D(n.TEXTURE_2D_ARRAY,it,0,0,0,Y.width,Y.height,J.depth,lt,Y.data)}else e.compressedTexImage3D(n.TEXTURE_2D_ARRAY,it,K,Y.width,Y.height,J.depth,0,Y.data,0,0);else Rt("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else st?At&&e.texSubImage3D(n.TEXTURE_2D_ARRAY,it,0,0,0,Y.width,Y.height,J.depth,lt,L,Y.data):e.texImage3D(n.TEXTURE_2D_ARRAY,it,K,Y.width,Y.height,J.depth,0,lt,L,Y.data);S.layerUpdates.size>0&&S.clearLayerUpdates()}else{st&&at&&e.texStorage2D(n.TEXTURE_2D,Gt,K,ct[0].width,ct[0].height);for(let it=0,Ct=ct.length;it<Ct;it++)Y=ct[it],S.format!==jn?lt!==null?st?At&&e.compressedTexSubImage2D(n.TEXTURE_2D,it,0,0,Y.width,Y.height,lt,Y.data):e.compressedTexImage2D(n.TEXTURE_2D,it,K,Y.width,Y.height,0,Y.data):Rt("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):st?At&&e.texSubImage2D(n.TEXTURE_2D,it,0,0,Y.width,Y.height,lt,L,Y.data):e.texImage2D(n.TEXTURE_2D,it,K,Y.width,Y.height,0,lt,L,Y.data)}else if(S.isDataArrayTexture)if(st){if(at&&e.texStorage3D(n.TEXTURE_2D_ARRAY,Gt,K,J.width,J.height,J.depth),At)if(S.layerUpdates.size>0){let it=hf(J.width,J.height,S.format,S.type);for(let Ct of S.layerUpdates){let zt=J.data.subarray(Ct*it/J.data.BYTES_PER_ELEMENT,(Ct+1)*it/J.data.BYTES_PER_ELEMENT);e.texSubImage3D(n.TEXTURE_2D_ARRAY,0,0,0,Ct,J.width,J.height,1,lt,L,zt)}S.clearLayerUpdates()}else e.texSubImage3D(n.TEXTURE_2D_ARRAY,0,0,0,0,J.width,J.height,J.depth,lt,L,J.data)}else e.texImage3D(n.TEXTURE_2D_ARRAY,0,K,J.width,J.height,J.depth,0,lt,L,J.data);else if(S.isData3DTexture)st?(at&&e.texStorage3D(n.TEXTURE_3D,Gt,K,J.width,J.height,J.depth),At&&e.texSubImage3D(n.TEXTURE_3D,0,0,0,0,J.width,J.height,J.depth,lt,L,J.data)):e.texImage3D(n.TEXTURE_3D,0,K,J.width,J.height,J.depth,0,lt,L,J.data);else if(S.isFramebufferTexture){if(at)if(st)e.texStorage2D(n.TEXTURE_2D,Gt,K,J.width,J.height);else{let it=J.width,Ct=J.height;for(let zt=0;zt<Gt;zt++)e.texImage2D(n.TEXTURE_2D,zt,K,it,Ct,0,lt,L,null),it>>=1,Ct>>=1}}else if(S.isHTMLTexture){if("texElementImage2D"in n){let it=n.canvas;if(it.hasAttribute("layoutsubtree")||it.setAttribute("layoutsubtree","true"),J.parentNode!==it){it.appendChild(J),f.add(S),it.onpaint=Ct=>{let zt=Ct.changedElements;for(let gt of f)zt.includes(gt.image)&&(gt.needsUpdate=!0)},it.requestPaint();return}if(n.texElementImage2D.length===3)n.texElementImage2D(n.TEXTURE_2D,n.RGBA8,J);else{let zt=n.RGBA,gt=n.RGBA,le=n.UNSIGNED_BYTE;n.texElementImage2D(n.TEXTURE_2D,0,zt,gt,le,J)}n.texParameteri(n.TEXTURE_2D,n.TEXTURE_MIN_FILTER,n.LINEAR),n.texParameteri(n.TEXTURE_2D,n.TEXTURE_WRAP_S,n.CLAMP_TO_EDGE),n.texParameteri(n.TEXTURE_2D,n.TEXTURE_WRAP_T,n.CLAMP_TO_EDGE)}}else if(ct.length>0){if(st&&at){let it=Ot(ct[0]);e.texStorage2D(n.TEXTURE_2D,Gt,K,it.width,it.height)}for(let it=0,Ct=ct.length;it<Ct;it++)Y=ct[it],st?At&&e.texSubImage2D(n.TEXTURE_2D,it,0,0,lt,L,Y):e.texImage2D(n.TEXTURE_2D,it,K,lt,L,Y);S.generateMipmaps=!1}else if(st){if(at){let it=Ot(J);e.texStorage2D(n.TEXTURE_2D,Gt,K,it.width,it.height)}At&&e.texSubImage2D(n.TEXTURE_2D,0,0,0,lt,L,J)}else e.texImage2D(n.TEXTURE_2D,0,K,lt,L,J);M(S)&&S.mipmapsAutoUpdate===!0&&b(nt),ht.__version=ot.version,S.onUpdate&&S.onUpdate(S)}C.__version=S.version}function dn(C,S,V){if(S.image.length!==6)return;let nt=oe(C,S),j=S.source;e.bindTexture(n.TEXTURE_CUBE_MAP,C.__webglTexture,n.TEXTURE0+V);let ot=i.get(j);if(j.version!==ot.__version||nt===!0){e.activeTexture(n.TEXTURE0+V);let ht=Jt.getPrimaries(Jt.workingColorSpace),$=S.colorSpace===Pi?null:Jt.getPrimaries(S.colorSpace),J=S.colorSpace===Pi||ht===$?n.NONE:n.BROWSER_DEFAULT_WEBGL;e.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,S.flipY),e.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,S.premultiplyAlpha),e.pixelStorei(n.UNPACK_ALIGNMENT,S.unpackAlignment),e.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,J);let lt=S.isCompressedTexture||S.image[0].isCompressedTexture,L=S.image[0]&&S.image[0].isDataTexture,K=[];for(let gt=0;gt<6;gt++)!lt&&!L?K[gt]=v(S.image[gt],!0,s.maxCubemapSize):K[gt]=L?S.image[gt].image:S.image[gt],K[gt]=Lt(S,K[gt]);let Y=K[0],ct=r.convert(S.format,S.colorSpace),st=r.convert(S.type),at=A(S.internalFormat,ct,st,S.normalized,S.colorSpace),At=S.isVideoTexture!==!0,Gt=ot.__version===void 0||nt===!0,it=j.dataReady,Ct=T(S,Y);te(n.TEXTURE_CUBE_MAP,S);let zt;if(S.isDepthTexture){if(at=x(S.format===Ri,S.type),Gt)if(At)e.texStorage2D(n.TEXTURE_CUBE_MAP,1,at,Y.width,Y.height);else for(let gt=0;gt<6;gt++)e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,at,Y.width,Y.height,0,ct,st,null)}else if(lt){At&&Gt&&e.texStorage2D(n.TEXTURE_CUBE_MAP,Ct,at,Y.width,Y.height);for(let gt=0;gt<6;gt++){zt=K[gt].mipmaps;for(let le=0;le<zt.length;le++){let He=zt[le];S.format!==jn?ct!==null?At?it&&e.compressedTexSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,le,0,0,He.width,He.height,ct,He.data):e.compressedTexImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,le,at,He.width,He.height,0,He.data):Rt("WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):At?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,le,0,0,He.width,He.height,ct,st,He.data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,le,at,He.width,He.height,0,ct,st,He.data)}}}else{if(zt=S.mipmaps,At&&Gt){zt.length>0&&Ct++;let gt=Ot(K[0]);e.texStorage2D(n.TEXTURE_CUBE_MAP,Ct,at,gt.width,gt.height)}for(let gt=0;gt<6;gt++)if(L){At?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,0,0,K[gt].width,K[gt].height,ct,st,K[gt].data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,at,K[gt].width,K[gt].height,0,ct,st,K[gt].data);for(let le=0;le<zt.length;le++){let Li=zt[le].image[gt].image;At?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,le+1,0,0,Li.width,Li.height,ct,st,Li.data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,le+1,at,Li.width,Li.height,0,ct,st,Li.data)}}else{At?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,0,0,ct,st,K[gt]):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,at,ct,st,K[gt]);for(let le=0;le<zt.length;le++){let He=zt[le];At?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,le+1,0,0,ct,st,He.image[gt]):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,le+1,at,ct,st,He.image[gt])}}}M(S)&&S.mipmapsAutoUpdate===!0&&b(n.TEXTURE_CUBE_MAP),ot.__version=j.version,S.onUpdate&&S.onUpdate(S)}C.__version=S.version}function we(C,S,V,nt,j,ot){let ht=r.convert(V.format,V.colorSpace),$=r.convert(V.type),J=A(V.internalFormat,ht,$,V.normalized,V.colorSpace),lt=i.get(S),L=i.get(V);if(L.__renderTarget=S,!lt.__hasExternalTextures){let K=Math.max(1,S.width>>ot),Y=Math.max(1,S.height>>ot);j===n.TEXTURE_3D||j===n.TEXTURE_2D_ARRAY?e.texImage3D(j,ot,J,K,Y,S.depth,0,ht,$,null):e.texImage2D(j,ot,J,K,Y,0,ht,$,null)}e.bindFramebuffer(n.FRAMEBUFFER,C),pt(S)?a.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,nt,j,L.__webglTexture,0,ye(S)):(j===n.TEXTURE_2D||j>=n.TEXTURE_CUBE_MAP_POSITIVE_X&&j<=n.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&n.framebufferTexture2D(n.FRAMEBUFFER,nt,j,L.__webglTexture,ot),e.bindFramebuffer(n.FRAMEBUFFER,null)}function Qn(C,S,V){if(n.bindRenderbuffer(n.RENDERBUFFER,C),S.depthBuffer){let nt=S.depthTexture,j=nt&&nt.isDepthTexture?nt.type:null,ot=x(S.stencilBuffer,j),ht=S.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;pt(S)?a.renderbufferStorageMultisampleEXT(n.RENDERBUFFER,ye(S),ot,S.width,S.height):V?n.renderbufferStorageMultisample(n.RENDERBUFFER,ye(S),ot,S.width,S.height):n.renderbufferStorage(n.RENDERBUFFER,ot,S.width,S.height),n.framebufferRenderbuffer(n.FRAMEBUFFER,ht,n.RENDERBUFFER,C)}else{let nt=S.textures;for(let j=0;j<nt.length;j++){let ot=nt[j],ht=r.convert(ot.format,ot.colorSpace),$=r.convert(ot.type),J=A(ot.internalFormat,ht,$,ot.normalized,ot.colorSpace);pt(S)?a.renderbufferStorageMultisampleEXT(n.RENDERBUFFER,ye(S),J,S.width,S.height):V?n.renderbufferStorageMultisample(n.RENDERBUFFER,ye(S),J,S.width,S.height):n.renderbufferStorage(n.RENDERBUFFER,J,S.width,S.height)}}n.bindRenderbuffer(n.RENDERBUFFER,null)}function Ge(C,S,V){let nt=S.isWebGLCubeRenderTarget===!0;if(e.bindFramebuffer(n.FRAMEBUFFER,C),!(S.depthTexture&&S.depthTexture.isDepthTexture))throw new Error("THREE.WebGLTextures: renderTarget.depthTexture must be an instance of THREE.DepthTexture.");let j=i.get(S.depthTexture);j.__renderTarget=S;let ot=nt?S.depthTexture.image[0]:S.depthTexture.image;(!j.__webglTexture||ot.width!==S.width||ot.height!==S.height)&&(ot.width=S.width,ot.height=S.height,S.depthTexture.needsUpdate=!0),nt?mt(S.depthTexture,0):dt(S.depthTexture,0);let ht=j.__webglTexture,$=ye(S),J=nt?n.TEXTURE_CUBE_MAP_POSITIVE_X+V:n.TEXTURE_2D,lt=S.depthTexture.format===Ri?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;if(S.depthTexture.format===wi)pt(S)?a.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,lt,J,ht,0,$):n.framebufferTexture2D(n.FRAMEBUFFER,lt,J,ht,0);else if(S.depthTexture.format===Ri)pt(S)?a.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,lt,J,ht,0,$):n.framebufferTexture2D(n.FRAMEBUFFER,lt,J,ht,0);else throw new Error("THREE.WebGLTextures: Unknown depthTexture format.")}function Pn(C){let S=i.get(C),V=C.isWebGLCubeRenderTarget===!0;if(S.__boundDepthTexture!==C.depthTexture){let nt=C.depthTexture;if(S.__depthDisposeCallback&&S.__depthDisposeCallback(),nt){let j=()=>{delete S.__boundDepthTexture,delete S.__depthDisposeCallback,nt.removeEventListener("dispose",j)};nt.addEventListener("dispose",j),S.__depthDisposeCallback=j}S.__boundDepthTexture=nt}if(C.depthTexture&&!S.__autoAllocateDepthBuffer)if(V)for(let nt=0;nt<6;nt++)Ge(S.__webglFramebuffer[nt],C,nt);else C.texture.mipmaps.length>0?Ge(S.__webglFramebuffer[0],C,0):Ge(S.__webglFramebuffer,C,0);else if(V){S.__webglDepthbuffer=[];for(let nt=0;nt<6;nt++)if(e.bindFramebuffer(n.FRAMEBUFFER,S.__webglFramebuffer[nt]),S.__webglDepthbuffer[nt]===void 0)S.__webglDepthbuffer[nt]=n.createRenderbuffer(),Qn(S.__webglDepthbuffer[nt],C,!1);else{let j=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,ot=S.__webglDepthbuffer[nt];n.bindRenderbuffer(n.RENDERBUFFER,ot),n.framebufferRenderbuffer(n.FRAMEBUFFER,j,n.RENDERBUFFER,ot)}}else if(C.texture.mipmaps.length>0?e.bindFramebuffer(n.FRAMEBUFFER,S.__webglFramebuffer[0]):e.bindFramebuffer(n.FRAMEBUFFER,S.__webglFramebuffer),S.__webglDepthbuffer===void 0)S.__webglDepthbuffer=n.createRenderbuffer(),Qn(S.__webglDepthbuffer,C,!1);else{let j=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,ot=S.__webglDepthbuffer;n.bindRenderbuffer(n.RENDERBUFFER,ot),n.framebufferRenderbuffer(n.FRAMEBUFFER,j,n.RENDERBUFFER,ot)}e.bindFramebuffer(n.FRAMEBUFFER,null)}function In(C,S,V){let nt=i.get(C);S!==void 0&&we(nt.__webglFramebuffer,C,C.texture,n.COLOR_ATTACHMENT0,n.TEXTURE_2D,0),V!==void 0&&Pn(C)}function Dn(C){let S=C.texture,V=i.get(C),nt=i.get(S);C.addEventListener("dispose",F),D(C);let j=C.textures,ot=C.isWebGLCubeRenderTarget===!0,ht=j.length>1;if(ht||(nt.__webglTexture===void 0&&(nt.__webglTexture=n.createTexture()),nt.__version=S.version,o.memory.textures++),ot){V.__webglFramebuffer=[];for(let $=0;$<6;$++)if(S.mipmaps.length>0){V.__webglFramebuffer[$]=[];for(let J=0;J<S.mipmaps.length;J++)V.__webglFramebuffer[$][J]=n.createFramebuffer()}else V.__webglFramebuffer[$]=n.createFramebuffer()}else{if(S.mipmaps.length>0){V.__webglFramebuffer=[];for(let $=0;$<S.mipmaps.length;$++)V.__webglFramebuffer[$]=n.createFramebuffer()}else V.__webglFramebuffer=n.createFramebuffer();if(ht)for(let $=0,J=j.length;$<J;$++){let lt=i.get(j[$]);lt.__webglTexture===void 0&&(lt.__webglTexture=n.createTexture(),o.memory.textures++)}if(C.samples>0&&pt(C)===!1){V.__webglMultisampledFramebuffer=n.createFramebuffer(),V.__webglColorRenderbuffer=[],e.bindFramebuffer(n.FRAMEBUFFER,V.__webglMultisampledFramebuffer);for(let $=0;$<j.length;$++){let J=j[$];V.__webglColorRenderbuffer[$]=n.createRenderbuffer(),n.bindRenderbuffer(n.RENDERBUFFER,V.__webglColorRenderbuffer[$]);let lt=r.convert(J.format,J.colorSpace),L=r.convert(J.type),K=A(J.internalFormat,lt,L,J.normalized,J.colorSpace,C.isXRRenderTarget===!0),Y=ye(C);n.renderbufferStorageMultisample(n.RENDERBUFFER,Y,K,C.width,C.height),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+$,n.RENDERBUFFER,V.__webglColorRenderbuffer[$])}n.bindRenderbuffer(n.RENDERBUFFER,null),C.depthBuffer&&(V.__webglDepthRenderbuffer=n.createRenderbuffer(),Qn(V.__webglDepthRenderbuffer,C,!0)),e.bindFramebuffer(n.FRAMEBUFFER,null)}}if(ot){e.bindTexture(n.TEXTURE_CUBE_MAP,nt.__webglTexture),te(n.TEXTURE_CUBE_MAP,S);for(let $=0;$<6;$++)if(S.mipmaps.length>0)for(let J=0;J<S.mipmaps.length;J++)we(V.__webglFramebuffer[$][J],C,S,n.COLOR_ATTACHMENT0,n.TEXTURE_CUBE_MAP_POSITIVE_X+$,J);else we(V.__webglFramebuffer[$],C,S,n.COLOR_ATTACHMENT0,n.TEXTURE_CUBE_MAP_POSITIVE_X+$,0);M(S)?b(n.TEXTURE_CUBE_MAP):S.mipmaps.length>0&&n.texParameteri(n.TEXTURE_CUBE_MAP,n.TEXTURE_MAX_LEVEL,S.mipmaps.length-1),e.unbindTexture()}else if(ht){for(let $=0,J=j.length;$<J;$++){let lt=j[$],L=i.get(lt),K=n.TEXTURE_2D;(C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&(K=C.isWebGL3DRenderTarget?n.TEXTURE_3D:n.TEXTURE_2D_ARRAY),e.bindTexture(K,L.__webglTexture),te(K,lt),we(V.__webglFramebuffer,C,lt,n.COLOR_ATTACHMENT0+$,K,0),M(lt)&&b(K)}e.unbindTexture()}else{let $=n.TEXTURE_2D;if((C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&($=C.isWebGL3DRenderTarget?n.TEXTURE_3D:n.TEXTURE_2D_ARRAY),e.bindTexture($,nt.__webglTexture),te($,S),S.mipmaps.length>0)for(let J=0;J<S.mipmaps.length;J++)we(V.__webglFramebuffer[J],C,S,n.COLOR_ATTACHMENT0,$,J);else we(V.__webglFramebuffer,C,S,n.COLOR_ATTACHMENT0,$,0);M(S)?b($):S.mipmaps.length>0&&n.texParameteri($,n.TEXTURE_MAX_LEVEL,S.mipmaps.length-1),e.unbindTexture()}C.depthBuffer&&Pn(C)}function O(C){let S=C.textures;for(let V=0,nt=S.length;V<nt;V++){let j=S[V];if(M(j)&&j.mipmapsAutoUpdate===!0){let ot=E(C),ht=i.get(j).__webglTexture;e.bindTexture(ot,ht),b(ot),e.unbindTexture()}}}let Ln=[];function ve(C){if(C.samples>0){if(pt(C)===!1){let S=C.textures,V=C.width,nt=C.height,j=n.COLOR_BUFFER_BIT,ot=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,ht=i.get(C),$=S.length>1;if($)for(let lt=0;lt<S.length;lt++)e.bindFramebuffer(n.FRAMEBUFFER,ht.__webglMultisampledFramebuffer),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.RENDERBUFFER,null),e.bindFramebuffer(n.FRAMEBUFFER,ht.__webglFramebuffer),n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.TEXTURE_2D,null,0);e.bindFramebuffer(n.READ_FRAMEBUFFER,ht.__webglMultisampledFramebuffer),C.texture.mipmaps.length>0?e.bindFramebuffer(n.DRAW_FRAMEBUFFER,ht.__webglFramebuffer[0]):e.bindFramebuffer(n.DRAW_FRAMEBUFFER,ht.__webglFramebuffer);for(let lt=0;lt<S.length;lt++){if(C.resolveDepthBuffer&&(C.depthBuffer&&(j|=n.DEPTH_BUFFER_BIT),C.stencilBuffer&&C.resolveStencilBuffer&&(j|=n.STENCIL_BUFFER_BIT)),$){n.framebufferRenderbuffer(n.READ_FRAMEBUFFER,n.COLOR_ATTACHMENT0,n.RENDERBUFFER,ht.__webglColorRenderbuffer[lt]);let L=i.get(S[lt]).__webglTexture;n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0,n.TEXTURE_2D,L,0)}n.blitFramebuffer(0,0,V,nt,0,0,V,nt,j,n.NEAREST),l===!0&&(Ln.length=0,Ln.push(n.COLOR_ATTACHMENT0+lt),C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&Ln.push(ot),n.invalidateFramebuffer(n.READ_FRAMEBUFFER,Ln))}if(e.bindFramebuffer(n.READ_FRAMEBUFFER,null),e.bindFramebuffer(n.DRAW_FRAMEBUFFER,null),$)for(let lt=0;lt<S.length;lt++){e.bindFramebuffer(n.FRAMEBUFFER,ht.__webglMultisampledFramebuffer),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.RENDERBUFFER,ht.__webglColorRenderbuffer[lt]);let L=i.get(S[lt]).__webglTexture;e.bindFramebuffer(n.FRAMEBUFFER,ht.__webglFramebuffer),n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.TEXTURE_2D,L,0)}e.bindFramebuffer(n.DRAW_FRAMEBUFFER,ht.__webglMultisampledFramebuffer)}else if(C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&l){let S=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;n.invalidateFramebuffer(n.DRAW_FRAMEBUFFER,[S])}}}function ye(C){return Math.min(s.maxSamples,C.samples)}function pt(C){let S=i.get(C);return C.samples>0&&t.has("WEBGL_multisampled_render_to_texture")===!0&&S.__useRenderToTexture!==!1}function Ne(C){let S=o.render.frame;u.get(C)!==S&&(u.set(C,S),C.update())}function Lt(C,S){let V=C.colorSpace,nt=C.format,j=C.type;return C.isCompressedTexture===!0||C.isVideoTexture===!0||V!==_o&&V!==Pi&&(Jt.getTransfer(V)===ae?(nt!==jn||j!==gn)&&Rt("WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):Nt("WebGLTextures: Unsupported texture color space:",V)),S}function Ot(C){return typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement?(c.width=C.naturalWidth||C.width,c.height=C.naturalHeight||C.height):typeof VideoFrame<"u"&&C instanceof VideoFrame?(c.width=C.displayWidth,c.height=C.displayHeight):(c.width=C.width,c.height=C.height),c}this.allocateTextureUnit=Dt,this.resetTextureUnits=tt,this.getTextureUnits=et,this.setTextureUnits=xt,this.setTexture2D=dt,this.setTexture2DArray=yt,this.setTexture3D=Et,this.setTextureCube=mt,this.rebindTextures=In,this.setupRenderTarget=Dn,this.updateRenderTargetMipmap=O,this.updateMultisampleRenderTarget=ve,this.setupDepthRenderbuffer=Pn,this.setupFrameBufferTexture=we,this.useMultisampledRTT=pt,this.dispose=W}function RS(n,t){function e(i,s=Pi){let r,o=Jt.getTransfer(s);if(i===gn)return n.UNSIGNED_BYTE;if(i===uc)return n.UNSIGNED_SHORT_4_4_4_4;if(i===hc)return n.UNSIGNED_SHORT_5_5_5_1;if(i===$h)return n.UNSIGNED_INT_5_9_9_9_REV;if(i===Zh)return n.UNSIGNED_INT_10F_11F_11F_REV;if(i===qh)return n.BYTE;if(i===Yh)return n.SHORT;if(i===Er)return n.UNSIGNED_SHORT;if(i===cc)return n.INT;if(i===Jn)return n.UNSIGNED_INT;if(i===kn)return n.FLOAT;if(i===Kn)return n.HALF_FLOAT;if(i===Jh)return n.ALPHA;if(i===Kh)return n.RGB;if(i===jn)return n.RGBA;if(i===wi)return n.DEPTH_COMPONENT;if(i===Ri)return n.DEPTH_STENCIL;if(i===fc)return n.RED;if(i===dc)return n.RED_INTEGER;if(i===es)return n.RG;if(i===pc)return n.RG_INTEGER;if(i===mc)return n.RGBA_INTEGER;if(i===Ko||i===jo||i===Qo||i===ta)if(o===ae)if(r=t.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(i===Ko)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(i===jo)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(i===Qo)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(i===ta)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=t.get("WEBGL_compressed_texture_s3tc"),r!==null){if(i===Ko)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(i===jo)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(i===Qo)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(i===ta)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(i===gc||i===_c||i===vc||i===yc)if(r=t.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(i===gc)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(i===_c)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(i===vc)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(i===yc)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(i===xc||i===bc||i===Mc||i===Sc||i===wc||i===ea||i===Tc)if(r=t.get("WEBGL_compressed_texture_etc"),r!==null){if(i===xc||i===bc)return o===ae?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(i===Mc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC;if(i===Sc)return r.COMPRESSED_R11_EAC;if(i===wc)return r.COMPRESSED_SIGNED_R11_EAC;if(i===ea)return r.COMPRESSED_RG11_EAC;if(i===Tc)return r.COMPRESSED_SIGNED_RG11_EAC}else return null;if(i===Ac||i===Ec||i===Cc||i===Rc||i===Pc||i===Ic||i===Dc||i===Lc||i===Nc||i===Uc||i===Fc||i===Oc||i===Bc||i===kc)if(r=t.get("WEBGL_compressed_texture_astc"),r!==null){if(i===Ac)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(i===Ec)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(i===Cc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(i===Rc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(i===Pc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(i===Ic)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(i===Dc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(i===Lc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(i===Nc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(i===Uc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(i===Fc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(i===Oc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(i===Bc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(i===kc)return o===ae?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(i===zc||i===Vc||i===Gc)if(r=t.get("EXT_texture_compression_bptc"),r!==null){if(i===zc)return o===ae?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(i===Vc)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(i===Gc)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(i===Hc||i===Wc||i===na||i===Xc)if(r=t.get("EXT_texture_compression_rgtc"),r!==null){if(i===Hc)return r.COMPRESSED_RED_RGTC1_EXT;if(i===Wc)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(i===na)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(i===Xc)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return i===Es?n.UNSIGNED_INT_24_8:n[i]!==void 0?n[i]:null}return{convert:e}}var PS=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,IS=`
uniform sampler2DArray depthColor;
uniform float depthWidth;
uniform float depthHeight;

void main() {

	vec2 coord = vec2( gl_FragCoord.x / depthWidth, gl_FragCoord.y / depthHeight );

	if ( coord.x >= 1.0 ) {

		gl_FragDepth = texture( depthColor, vec3( coord.x - 1.0, coord.y, 1 ) ).r;

	} else {

		gl_FragDepth = texture( depthColor, vec3( coord.x, coord.y, 0 ) ).r;

	}

}`,xf=class{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(t,e){if(this.texture===null){let i=new Po(t.texture);(t.depthNear!==e.depthNear||t.depthFar!==e.depthFar)&&(this.depthNear=t.depthNear,this.depthFar=t.depthFar),this.texture=i}}getMesh(t){if(this.texture!==null&&this.mesh===null){let e=t.cameras[0].viewport,i=new Cn({vertexShader:PS,fragmentShader:IS,uniforms:{depthColor:{value:this.texture},depthWidth:{value:e.z},depthHeight:{value:e.w}}});this.mesh=new Re(new zo(20,20),i)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}},bf=class extends Zn{constructor(t,e){super();let i=this,s=null,r=1,o=null,a="local-floor",l=1,c=null,u=null,f=null,d=null,h=null,m=null,y=typeof XRWebGLBinding<"u",g=new xf,p={},v=e.getContextAttributes(),M=null,b=null,E=[],A=[],x=new rt,T=null,D=null,R=new un;R.viewport=new Se;let P=new un;P.viewport=new Se;let F=[R,P],k=new sc,I=null,W=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(Z){let dt=E[Z];return dt===void 0&&(dt=new gr,E[Z]=dt),dt.getTargetRaySpace()},this.getControllerGrip=function(Z){let dt=E[Z];return dt===void 0&&(dt=new gr,E[Z]=dt),dt.getGripSpace()},this.getHand=function(Z){let dt=E[Z];return dt===void 0&&(dt=new gr,E[Z]=dt),dt.getHandSpace()};function X(Z){let dt=A.indexOf(Z.inputSource);if(dt===-1)return;let yt=E[dt];yt!==void 0&&(yt.update(Z.inputSource,Z.frame,c||o),yt.dispatchEvent({type:Z.type,data:Z.inputSource}))}function B(){s.removeEventListener("select",X),s.removeEventListener("selectstart",X),s.removeEventListener("selectend",X),s.removeEventListener("squeeze",X),s.removeEventListener("squeezestart",X),s.removeEventListener("squeezeend",X),s.removeEventListener("end",B),s.removeEventListener("inputsourceschange",Q);for(let Z=0;Z<E.length;Z++){let dt=A[Z];dt!==null&&(A[Z]=null,E[Z].disconnect(dt))}I=null,W=null,g.reset();for(let Z in p)delete p[Z];if(t.setRenderTarget(M),h=null,d=null,f=null,s=null,b=null,Dt.stop(),i.isPresenting=!1,t.setPixelRatio(T),t.setSize(x.width,x.height,!1),D!==null){let Z=D.camera;Z.fov=D.fov,Z.zoom=D.zoom,Z.updateProjectionMatrix(),D=null}i.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(Z){r=Z,i.isPresenting===!0&&Rt("WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(Z){a=Z,i.isPresenting===!0&&Rt("WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return c||o},this.setReferenceSpace=function(Z){c=Z},this.getBaseLayer=function(){return d!==null?d:h},this.getBinding=function(){return f===null&&y&&(f=new XRWebGLBinding(s,e)),f},this.getFrame=function(){return m},this.getSession=function(){return s},this.setSession=async function(Z){if(s=Z,s!==null){if(M=t.getRenderTarget(),s.addEventListener("select",X),s.addEventListener("selectstart",X),s.addEventListener("selectend",X),s.addEventListener("squeeze",X),s.addEventListener("squeezestart",X),s.addEventListener("squeezeend",X),s.addEventListener("end",B),s.addEventListener("inputsourceschange",Q),v.xrCompatible!==!0&&await e.makeXRCompatible(),T=t.getPixelRatio(),t.getSize(x),y&&"createProjectionLayer"in XRWebGLBinding.prototype){let yt=null,Et=null,mt=null;v.depth&&(mt=v.stencil?e.DEPTH24_STENCIL8:e.DEPTH_COMPONENT24,yt=v.stencil?Ri:wi,Et=v.stencil?Es:Jn);let Ut={colorFormat:e.RGBA8,depthFormat:mt,scaleFactor:r};f=this.getBinding(),d=f.createProjectionLayer(Ut),s.updateRenderState({layers:[d]}),t.setPixelRatio(1),t.setSize(d.textureWidth,d.textureHeight,!1),b=new An(d.textureWidth,d.textureHeight,{format:jn,type:gn,depthTexture:new Ai(d.textureWidth,d.textureHeight,Et,void 0,void 0,void 0,void 0,void 0,void 0,yt),stencilBuffer:v.stencil,colorSpace:t.outputColorSpace,samples:v.antialias?4:0,resolveDepthBuffer:d.ignoreDepthValues===!1,resolveStencilBuffer:d.ignoreDepthValues===!1,storeMultisampledDepthBuffer:d.ignoreDepthValues===!1,storeMultisampledStencilBuffer:d.ignoreDepthValues===!1})}else{let yt={antialias:v.antialias,alpha:!0,depth:v.depth,stencil:v.stencil,framebufferScaleFactor:r};h=new XRWebGLLayer(s,e,yt),s.updateRenderState({baseLayer:h}),t.setPixelRatio(1),t.setSize(h.framebufferWidth,h.framebufferHeight,!1),b=new An(h.framebufferWidth,h.framebufferHeight,{format:jn,type:gn,colorSpace:t.outputColorSpace,stencilBuffer:v.stencil,resolveDepthBuffer:h.ignoreDepthValues===!1,resolveStencilBuffer:h.ignoreDepthValues===!1,storeMultisampledDepthBuffer:h.ignoreDepthValues===!1,storeMultisampledStencilBuffer:h.ignoreDepthValues===!1})}b.isXRRenderTarget=!0,this.setFoveation(l),c=null,o=await s.requestReferenceSpace(a),Dt.setContext(s),Dt.start(),i.isPresenting=!0,i.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return g.getDepthTexture()};function Q(Z){for(let dt=0;dt<Z.removed.length;dt++){let yt=Z.removed[dt],Et=A.indexOf(yt);Et>=0&&(A[Et]=null,E[Et].disconnect(yt))}for(let dt=0;dt<Z.added.length;dt++){let yt=Z.added[dt],Et=A.indexOf(yt);if(Et===-1){for(let Ut=0;Ut<E.length;Ut++)if(Ut>=A.length){A.push(yt),Et=Ut;break}else if(A[Ut]===null){A[Ut]=yt,Et=Ut;break}if(Et===-1)break}let mt=E[Et];mt&&mt.connect(yt)}}function G(Z,dt){dt===null?Z.matrixWorld.copy(Z.matrix):Z.matrixWorld.multiplyMatrices(dt.matrixWorld,Z.matrix),Z.matrixWorldInverse.copy(Z.matrixWorld).invert()}this.updateCamera=function(Z){if(s===null)return;let dt=Z.near,yt=Z.far;g.texture!==null&&(g.depthNear>0&&(dt=g.depthNear),g.depthFar>0&&(yt=g.depthFar)),k.near=P.near=R.near=dt,k.far=P.far=R.far=yt,(I!==k.near||W!==k.far)&&(s.updateRenderState({depthNear:k.near,depthFar:k.far}),I=k.near,W=k.far),k.layers.mask=Z.layers.mask|6,R.layers.mask=k.layers.mask&-5,P.layers.mask=k.layers.mask&-3;let Et=Z.parent,mt=k.cameras;G(k,Et);for(let Ut=0;Ut<mt.length;Ut++)G(mt[Ut],Et);k.projectionMatrix.copy(R.projectionMatrix),k.projectionMatrixInverse.copy(R.projectionMatrixInverse),D===null&&Z.isPerspectiveCamera&&(D={camera:Z,fov:Z.fov,zoom:Z.zoom}),tt(Z,k,Et)};function tt(Z,dt,yt){yt===null?Z.matrix.copy(dt.matrixWorld):(Z.matrix.copy(yt.matrixWorld),Z.matrix.invert(),Z.matrix.multiply(dt.matrixWorld)),Z.matrix.decompose(Z.position,Z.quaternion,Z.scale),Z.updateMatrixWorld(!0),Z.projectionMatrix.copy(dt.projectionMatrix),Z.projectionMatrixInverse.copy(dt.projectionMatrixInverse),Z.isPerspectiveCamera&&(Z.fov=pr*2*Math.atan(1/Z.projectionMatrix.elements[5]),Z.zoom=1)}this.getCamera=function(){return k},this.getFoveation=function(){if(!(d===null&&h===null))return l},this.setFoveation=function(Z){l=Z,d!==null&&(d.fixedFoveation=Z),h!==null&&h.fixedFoveation!==void 0&&(h.fixedFoveation=Z)},this.hasDepthSensing=function(){return g.texture!==null},this.getDepthSensingMesh=function(){return g.getMesh(k)},this.getCameraTexture=function(Z){return p[Z]};let et=null;function xt(Z,dt){if(u=dt.getViewerPose(c||o),m=dt,u!==null){let yt=u.views;h!==null&&(t.setRenderTargetFramebuffer(b,h.framebuffer),t.setRenderTarget(b));let Et=!1;yt.length!==k.cameras.length&&(k.cameras.length=0,Et=!0);for(let Pt=0;Pt<yt.length;Pt++){let te=yt[Pt],oe=null;if(h!==null)oe=h.getViewport(te);else{let Ze=f.getViewSubImage(d,te);oe=Ze.viewport,Pt===0&&(t.setRenderTargetTextures(b,Ze.colorTexture,Ze.depthStencilTexture),t.setRenderTarget(b))}let qt=F[Pt];qt===void 0&&(qt=new un,qt.layers.enable(Pt),qt.viewport=new Se,F[Pt]=qt),qt.matrix.fromArray(te.transform.matrix),qt.matrix.decompose(qt.position,qt.quaternion,qt.scale),qt.projectionMatrix.fromArray(te.projectionMatrix),qt.projectionMatrixInverse.copy(qt.projectionMatrix).invert(),qt.viewport.set(oe.x,oe.y,oe.width,oe.height),Pt===0&&(k.matrix.copy(qt.matrix),k.matrix.decompose(k.position,k.quaternion,k.scale)),Et===!0&&k.cameras.push(qt)}let mt=s.enabledFeatures;if(mt&&mt.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&y){f=i.getBinding();let Pt=f.getDepthInformation(yt[0]);Pt&&Pt.isValid&&Pt.texture&&g.init(Pt,s.renderState)}if(mt&&mt.includes("camera-access")&&y){t.state.unbindTexture(),f=i.getBinding();for(let Pt=0;Pt<yt.length;Pt++){let te=yt[Pt].camera;if(te){let oe=p[te];oe||(oe=new Po,p[te]=oe);let qt=f.getCameraImage(te);oe.sourceTexture=qt}}}}for(let yt=0;yt<E.length;yt++){let Et=A[yt],mt=E[yt];Et!==null&&mt!==void 0&&mt.update(Et,dt,c||o)}et&&et(Z,dt),dt.detectedPlanes&&i.dispatchEvent({type:"planesdetected",data:dt}),m=null}let Dt=new pg;Dt.setAnimationLoop(xt),this.setAnimationLoop=function(Z){et=Z},this.dispose=function(){}}},DS=new Qt,wg=new Ft;wg.set(-1,0,0,0,1,0,0,0,1);function LS(n,t){function e(g,p){g.matrixAutoUpdate===!0&&g.updateMatrix(),p.value.copy(g.matrix)}function i(g,p){p.color.getRGB(g.fogColor.value,lf(n)),p.isFog?(g.fogNear.value=p.near,g.fogFar.value=p.far):p.isFogExp2&&(g.fogDensity.value=p.density)}function s(g,p,v,M,b){p.isNodeMaterial?p.uniformsNeedUpdate=!1:p.isMeshBasicMaterial?r(g,p):p.isMeshLambertMaterial?(r(g,p),p.envMap&&(g.envMapIntensity.value=p.envMapIntensity)):p.isMeshToonMaterial?(r(g,p),f(g,p)):p.isMeshPhongMaterial?(r(g,p),u(g,p),p.envMap&&(g.envMapIntensity.value=p.envMapIntensity)):p.isMeshStandardMaterial?(r(g,p),d(g,p),p.isMeshPhysicalMaterial&&h(g,p,b)):p.isMeshMatcapMaterial?(r(g,p),m(g,p)):p.isMeshDepthMaterial?r(g,p):p.isMeshDistanceMaterial?(r(g,p),y(g,p)):p.isMeshNormalMaterial?r(g,p):p.isLineBasicMaterial?(o(g,p),p.isLineDashedMaterial&&a(g,p)):p.isPointsMaterial?l(g,p,v,M):p.isSpriteMaterial?c(g,p):p.isShadowMaterial?(g.color.value.copy(p.color),g.opacity.value=p.opacity):p.isShaderMaterial&&(p.uniformsNeedUpdate=!1)}function r(g,p){g.opacity.value=p.opacity,p.color&&g.diffuse.value.copy(p.color),p.emissive&&g.emissive.value.copy(p.emissive).multiplyScalar(p.emissiveIntensity),p.map&&(g.map.value=p.map,e(p.map,g.mapTransform)),p.alphaMap&&(g.alphaMap.value=p.alphaMap,e(p.alphaMap,g.alphaMapTransform)),p.bumpMap&&(g.bumpMap.value=p.bumpMap,e(p.bumpMap,g.bumpMapTransform),g.bumpScale.value=p.bumpScale,p.side===fn&&(g.bumpScale.value*=-1)),p.normalMap&&(g.normalMap.value=p.normalMap,e(p.normalMap,g.normalMapTransform),g.normalScale.value.copy(p.normalScale),p.side===fn&&g.normalScale.value.negate()),p.displacementMap&&(g.displacementMap.value=p.displacementMap,e(p.displacementMap,g.displacementMapTransform),g.displacementScale.value=p.displacementScale,g.displacementBias.value=p.displacementBias),p.emissiveMap&&(g.emissiveMap.value=p.emissiveMap,e(p.emissiveMap,g.emissiveMapTransform)),p.specularMap&&(g.specularMap.value=p.specularMap,e(p.specularMap,g.specularMapTransform)),p.alphaTest>0&&(g.alphaTest.value=p.alphaTest);let v=t.get(p),M=v.envMap,b=v.envMapRotation;M&&(g.envMap.value=M,g.envMapRotation.value.setFromMatrix4(DS.makeRotationFromEuler(b)).transpose(),M.isCubeTexture&&M.isRenderTargetTexture===!1&&g.envMapRotation.value.premultiply(wg),g.reflectivity.value=p.reflectivity,g.ior.value=p.ior,g.refractionRatio.value=p.refractionRatio),p.lightMap&&(g.lightMap.value=p.lightMap,g.lightMapIntensity.value=p.lightMapIntensity,e(p.lightMap,g.lightMapTransform)),p.aoMap&&(g.aoMap.value=p.aoMap,g.aoMapIntensity.value=p.aoMapIntensity,e(p.aoMap,g.aoMapTransform))}function o(g,p){g.diffuse.value.copy(p.color),g.opacity.value=p.opacity,p.map&&(g.map.value=p.map,e(p.map,g.mapTransform))}function a(g,p){g.dashSize.value=p.dashSize,g.totalSize.value=p.dashSize+p.gapSize,g.scale.value=p.scale}function l(g,p,v,M){g.diffuse.value.copy(p.color),g.opacity.value=p.opacity,g.size.value=p.size*v,g.scale.value=M*.5,p.map&&(g.map.value=p.map,e(p.map,g.uvTransform)),p.alphaMap&&(g.alphaMap.value=p.alphaMap,e(p.alphaMap,g.alphaMapTransform)),p.alphaTest>0&&(g.alphaTest.value=p.alphaTest)}function c(g,p){g.diffuse.value.copy(p.color),g.opacity.value=p.opacity,g.rotation.value=p.rotation,p.map&&(g.map.value=p.map,e(p.map,g.mapTransform)),p.alphaMap&&(g.alphaMap.value=p.alphaMap,e(p.alphaMap,g.alphaMapTransform)),p.alphaTest>0&&(g.alphaTest.value=p.alphaTest)}function u(g,p){g.specular.value.copy(p.specular),g.shininess.value=Math.max(p.shininess,1e-4)}function f(g,p){p.gradientMap&&(g.gradientMap.value=p.gradientMap)}function d(g,p){g.metalness.value=p.metalness,p.metalnessMap&&(g.metalnessMap.value=p.metalnessMap,e(p.metalnessMap,g.metalnessMapTransform)),g.roughness.value=p.roughness,p.roughnessMap&&(g.roughnessMap.value=p.roughnessMap,e(p.roughnessMap,g.roughnessMapTransform)),p.envMap&&(g.envMapIntensity.value=p.envMapIntensity)}function h(g,p,v){g.ior.value=p.ior,p.diffuseRoughness>0&&(g.diffuseRoughness.value=p.diffuseRoughness,p.diffuseRoughnessMap&&(g.diffuseRoughnessMap.value=p.diffuseRoughnessMap,e(p.diffuseRoughnessMap,g.diffuseRoughnessMapTransform))),p.sheen>0&&(g.sheenColor.value.copy(p.sheenColor).multiplyScalar(p.sheen),g.sheenRoughness.value=p.sheenRoughness,p.sheenColorMap&&(g.sheenColorMap.value=p.sheenColorMap,e(p.sheenColorMap,g.sheenColorMapTransform)),p.sheenRoughnessMap&&(g.sheenRoughnessMap.value=p.sheenRoughnessMap,e(p.sheenRoughnessMap,g.sheenRoughnessMapTransform))),p.clearcoat>0&&(g.clearcoat.value=p.clearcoat,g.clearcoatRoughness.value=p.clearcoatRoughness,p.clearcoatMap&&(g.clearcoatMap.value=p.clearcoatMap,e(p.clearcoatMap,g.clearcoatMapTransform)),p.clearcoatRoughnessMap&&(g.clearcoatRoughnessMap.value=p.clearcoatRoughnessMap,e(p.clearcoatRoughnessMap,g.clearcoatRoughnessMapTransform)),p.clearcoatNormalMap&&(g.clearcoatNormalMap.value=p.clearcoatNormalMap,e(p.clearcoatNormalMap,g.clearcoatNormalMapTransform),g.clearcoatNormalScale.value.copy(p.clearcoatNormalScale),p.side===fn&&g.clearcoatNormalScale.value.negate())),p.dispersion>0&&(g.dispersion.value=p.dispersion),p.retroreflectivity>0&&(g.retroreflectivity.value=p.retroreflectivity),p.iridescence>0&&(g.iridescence.value=p.iridescence,g.iridescenceIOR.value=p.iridescenceIOR,g.iridescenceThicknessMinimum.value=p.iridescenceThicknessMinimum,g.iridescenceThicknessMaximum.value=p.iridescenceThicknessMaximum,p.iridescenceMap&&(g.iridescenceMap.value=p.iridescenceMap,e(p.iridescenceMap,g.iridescenceMapTransform)),p.iridescenceThicknessMap&&(g.iridescenceThicknessMap.value=p.iridescenceThicknessMap,e(p.iridescenceThicknessMap,g.iridescenceThicknessMapTransform))),p.transmission>0&&(g.transmission.value=p.transmission,g.transmissionSamplerMap.value=v.texture,g.transmissionSamplerSize.value.set(v.width,v.height),p.transmissionMap&&(g.transmissionMap.value=p.transmissionMap,e(p.transmissionMap,g.transmissionMapTransform)),g.thickness.value=p.thickness,p.thicknessMap&&(g.thicknessMap.value=p.thicknessMap,e(p.thicknessMap,g.thicknessMapTransform)),g.attenuationDistance.value=p.attenuationDistance,g.attenuationColor.value.copy(p.attenuationColor)),p.anisotropy>0&&(g.anisotropyVector.value.set(p.anisotropy*Math.cos(p.anisotropyRotation),p.anisotropy*Math.sin(p.anisotropyRotation)),p.anisotropyMap&&(g.anisotropyMap.value=p.anisotropyMap,e(p.anisotropyMap,g.anisotropyMapTransform))),g.specularIntensity.value=p.specularIntensity,g.specularColor.value.copy(p.specularColor),p.specularColorMap&&(g.specularColorMap.value=p.specularColorMap,e(p.specularColorMap,g.specularColorMapTransform)),p.specularIntensityMap&&(g.specularIntensityMap.value=p.specularIntensityMap,e(p.specularIntensityMap,g.specularIntensityMapTransform))}function m(g,p){p.matcap&&(g.matcap.value=p.matcap)}function y(g,p){let v=t.get(p).light;g.referencePosition.value.setFromMatrixPosition(v.matrixWorld),g.nearDistance.value=v.shadow.camera.near,g.farDistance.value=v.shadow.camera.far}return{refreshFogUniforms:i,refreshMaterialUniforms:s}}function NS(n,t,e,i){let s={},r={};function o(v,M){let b=M.program;i.uniformBlockBinding(v,b,s[v.id])}function a(v,M){let b=s[v.id];b===void 0&&(m(v),b=l(v),s[v.id]=b,v.addEventListener("dispose",g));let E=M.program;i.updateUBOMapping(v,E);let A=t.render.frame;r[v.id]!==A&&(c(v),r[v.id]=A)}function l(v){let M=n.createBuffer(),b=v.__size,E=v.usage;return n.bindBuffer(n.UNIFORM_BUFFER,M),n.bufferData(n.UNIFORM_BUFFER,b,E),n.bindBuffer(n.UNIFORM_BUFFER,null),M}function c(v){let M=s[v.id],b=v.uniforms,E=v.__cache;n.bindBuffer(n.UNIFORM_BUFFER,M);for(let A=0,x=b.length;A<x;A++){let T=b[A];if(Array.isArray(T))for(let D=0,R=T.length;D<R;D++)u(T[D],A,D,E);else u(T,A,0,E)}n.bindBuffer(n.UNIFORM_BUFFER,null)}function u(v,M,b,E){if(d(v,M,b,E)===!0){let A=v.__offset,x=v.value;if(Array.isArray(x)){let T=0;for(let D=0;D<x.length;D++){let R=x[D],P=y(R,!0);f(R,v.__data,T),T+=P.storage/Float32Array.BYTES_PER_ELEMENT}}else f(x,v.__data,0);n.bufferSubData(n.UNIFORM_BUFFER,A,v.__data)}}function f(v,M,b){typeof v=="number"||typeof v=="boolean"?M[b]=v:v.isMatrix3?(M[b]=v.elements[0],M[b+1]=v.elements[1],M[b+2]=v.elements[2],M[b+3]=0,M[b+4]=v.elements[3],M[b+5]=v.elements[4],M[b+6]=v.elements[5],M[b+7]=0,M[b+8]=v.elements[6],M[b+9]=v.elements[7],M[b+10]=v.elements[8],M[b+11]=0):ArrayBuffer.isView(v)?M.set(v.subarray(0,M.length-b),b):v.toArray(M,b)}function d(v,M,b,E){let A=v.value,x=M+"_"+b;if(Array.isArray(A)){E[x]===void 0&&(E[x]=[]);let T=E[x],D=!1;for(let R=0;R<A.length;R++)h(A[R],T,R)===!0&&(D=!0);return D}return h(A,E,x)}function h(v,M,b){if(M[b]===void 0)return typeof v=="number"||typeof v=="boolean"?M[b]=v:ArrayBuffer.isView(v)?M[b]=v.slice():M[b]=v.clone(),!0;{let E=M[b];if(typeof v=="number"||typeof v=="boolean"){if(E!==v)return M[b]=v,!0}else{if(ArrayBuffer.isView(v))return!0;if(E.equals(v)===!1)return E.copy(v),!0}}return!1}function m(v){let M=v.uniforms,b=0,E=16;for(let x=0,T=M.length;x<T;x++){let D=Array.isArray(M[x])?M[x]:[M[x]];for(let R=0,P=D.length;R<P;R++){let F=D[R],k=Array.isArray(F.value)?F.value:[F.value],I=Array.isArray(M[x])||Array.isArray(F.value),W=b;for(let B=0,Q=k.length;B<Q;B++){let G=k[B],tt=y(G,I),et=b%E,xt=et%tt.boundary,Dt=et+xt;b+=xt,Dt!==0&&E-Dt<tt.storage&&(b+=E-Dt),B===0&&(W=b),b+=tt.storage}let X=F.type==="int"?Int32Array:F.type==="uint"?Uint32Array:Float32Array;F.__data=new X((b-W)/Float32Array.BYTES_PER_ELEMENT),F.__offset=W}}let A=b%E;return A>0&&(b+=E-A),v.__size=b,v.__cache={},this}function y(v,M){let b={boundary:0,storage:0};return typeof v=="number"||typeof v=="boolean"?(b.boundary=4,b.storage=4):v.isVector2?(b.boundary=8,b.storage=8):v.isVector3||v.isColor?(b.boundary=16,b.storage=12):v.isVector4?(b.boundary=16,b.storage=16):v.isMatrix3?(b.boundary=16,b.storage=48):v.isMatrix4?(b.boundary=16,b.storage=64):v.isTexture?Rt("WebGLRenderer: Texture samplers can not be part of an uniforms group."):ArrayBuffer.isView(v)?(b.boundary=16,b.storage=v.byteLength):Rt("WebGLRenderer: Unsupported uniform value type.",v),M===!0&&(b.boundary=16,b.storage=Math.ceil(b.storage/16)*16),b}function g(v){let M=v.target;M.removeEventListener("dispose",g),n.deleteBuffer(s[M.id]),delete s[M.id],delete r[M.id]}function p(){for(let v in s)n.deleteBuffer(s[v]);s={},r={}}return{bind:o,update:a,dispose:p}}var US=new Uint16Array([12469,15057,12620,14925,13266,14620,13807,14376,14323,13990,14545,13625,14713,13328,14840,12882,14931,12528,14996,12233,15039,11829,15066,11525,15080,11295,15085,10976,15082,10705,15073,10495,13880,14564,13898,14542,13977,14430,14158,14124,14393,13732,14556,13410,14702,12996,14814,12596,14891,12291,14937,11834,14957,11489,14958,11194,14943,10803,14921,10506,14893,10278,14858,9960,14484,14039,14487,14025,14499,13941,14524,13740,14574,13468,14654,13106,14743,12678,14818,12344,14867,11893,14889,11509,14893,11180,14881,10751,14852,10428,14812,10128,14765,9754,14712,9466,14764,13480,14764,13475,14766,13440,14766,13347,14769,13070,14786,12713,14816,12387,14844,11957,14860,11549,14868,11215,14855,10751,14825,10403,14782,10044,14729,9651,14666,9352,14599,9029,14967,12835,14966,12831,14963,12804,14954,12723,14936,12564,14917,12347,14900,11958,14886,11569,14878,11247,14859,10765,14828,10401,14784,10011,14727,9600,14660,9289,14586,8893,14508,8533,15111,12234,15110,12234,15104,12216,15092,12156,15067,12010,15028,11776,14981,11500,14942,11205,14902,10752,14861,10393,14812,9991,14752,9570,14682,9252,14603,8808,14519,8445,14431,8145,15209,11449,15208,11451,15202,11451,15190,11438,15163,11384,15117,11274,15055,10979,14994,10648,14932,10343,14871,9936,14803,9532,14729,9218,14645,8742,14556,8381,14461,8020,14365,7603,15273,10603,15272,10607,15267,10619,15256,10631,15231,10614,15182,10535,15118,10389,15042,10167,14963,9787,14883,9447,14800,9115,14710,8665,14615,8318,14514,7911,14411,7507,14279,7198,15314,9675,15313,9683,15309,9712,15298,9759,15277,9797,15229,9773,15166,9668,15084,9487,14995,9274,14898,8910,14800,8539,14697,8234,14590,7790,14479,7409,14367,7067,14178,6621,15337,8619,15337,8631,15333,8677,15325,8769,15305,8871,15264,8940,15202,8909,15119,8775,15022,8565,14916,8328,14804,8009,14688,7614,14569,7287,14448,6888,14321,6483,14088,6171,15350,7402,15350,7419,15347,7480,15340,7613,15322,7804,15287,7973,15229,8057,15148,8012,15046,7846,14933,7611,14810,7357,14682,7069,14552,6656,14421,6316,14251,5948,14007,5528,15356,5942,15356,5977,15353,6119,15348,6294,15332,6551,15302,6824,15249,7044,15171,7122,15070,7050,14949,6861,14818,6611,14679,6349,14538,6067,14398,5651,14189,5311,13935,4958,15359,4123,15359,4153,15356,4296,15353,4646,15338,5160,15311,5508,15263,5829,15188,6042,15088,6094,14966,6001,14826,5796,14678,5543,14527,5287,14377,4985,14133,4586,13869,4257,15360,1563,15360,1642,15358,2076,15354,2636,15341,3350,15317,4019,15273,4429,15203,4732,15105,4911,14981,4932,14836,4818,14679,4621,14517,4386,14359,4156,14083,3795,13808,3437,15360,122,15360,137,15358,285,15355,636,15344,1274,15322,2177,15281,2765,15215,3223,15120,3451,14995,3569,14846,3567,14681,3466,14511,3305,14344,3121,14037,2800,13753,2467,15360,0,15360,1,15359,21,15355,89,15346,253,15325,479,15287,796,15225,1148,15133,1492,15008,1749,14856,1882,14685,1886,14506,1783,14324,1608,13996,1398,13702,1183]),hi=null;function FS(){return hi===null&&(hi=new To(US,16,16,es,Kn),hi.name="DFG_LUT",hi.minFilter=hn,hi.magFilter=hn,hi.wrapS=si,hi.wrapT=si,hi.generateMipmaps=!1,hi.needsUpdate=!0),hi}var Kc=class{constructor(t={}){let{canvas:e=Lm(),context:i=null,depth:s=!0,stencil:r=!1,alpha:o=!1,antialias:a=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:c=!1,powerPreference:u="default",failIfMajorPerformanceCaveat:f=!1,reversedDepthBuffer:d=!1,outputBufferType:h=gn}=t;this.isWebGLRenderer=!0;let m;if(i!==null){if(typeof WebGLRenderingContext<"u"&&i instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");m=i.getContextAttributes().alpha}else m=o;let y=h,g=new Set([mc,pc,dc]),p=new Set([gn,Jn,Er,Es,uc,hc]),v=new Uint32Array(4),M=new Int32Array(4),b={textures:[],min:[],max:[],resolution:[]},E=null,A=null,x=[],T=[],D=null;this.domElement=e,this.debug={checkShaderErrors:!0,diagnostics:{keywords:!1},onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=ui,this.toneMappingExposure=1,this.transmissionResolutionScale=1;let R=this,P=!1,F=null,k=null,I=null,W=null;this._outputColorSpace=wn;let X=0,B=0,Q=null,G=-1,tt=null,et=new Se,xt=new Se,Dt=null,Z=new kt(0),dt=0,yt=e.width,Et=e.height,mt=1,Ut=null,Ee=null,Pt=new Se(0,0,yt,Et),te=new Se(0,0,yt,Et),oe=!1,qt=new Wi,Ze=new Nl,Le=!1,dn=!1,we=new Qt,Qn=new N,Ge=new Se,Pn={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0},In=!1;function Dn(){return Q===null?mt:1}let O=i;function Ln(w,U){return e.getContext(w,U)}let ve,ye,pt,Ne,Lt,Ot,C,S,V,nt,j,ot,ht,$,J,lt,L,K,Y,ct,st,at,At;try{let w={alpha:!0,depth:s,stencil:r,antialias:a,premultipliedAlpha:l,preserveDrawingBuffer:c,powerPreference:u,failIfMajorPerformanceCaveat:f};if("setAttribute"in e&&e.setAttribute("data-engine",`three.js r${"187"}`),e.addEventListener("webglcontextlost",Ct,!1),e.addEventListener("webglcontextrestored",zt,!1),e.addEventListener("webglcontextcreationerror",gt,!1),O===null){let U="webgl2";if(O=Ln(U,w),O===null)throw Ln(U)?new Error("THREE.WebGLRenderer: Error creating WebGL context with your selected attributes."):new Error("THREE.WebGLRenderer: Error creating WebGL context.")}Gt()}catch(w){throw e.removeEventListener("webglcontextlost",Ct,!1),e.removeEventListener("webglcontextrestored",zt,!1),e.removeEventListener("webglcontextcreationerror",gt,!1),Nt("WebGLRenderer: "+w.message),w}function Gt(){ve=new Yb(O),ve.init(),st=new RS(O,ve),ye=new Fb(O,ve,t,st),pt=new ES(O,ve),ye.reversedDepthBuffer&&d&&pt.buffers.depth.setReversed(!0),k=O.createFramebuffer(),I=O.createFramebuffer(),W=O.createFramebuffer(),Ne=new Jb(O),Lt=new dS,Ot=new CS(O,ve,pt,Lt,ye,st,Ne),C=new qb(R),S=new jv(O),at=new Nb(O,S),V=new $b(O,S,Ne,at),nt=new jb(O,V,S,at,Ne),K=new Kb(O,ye,Ot),J=new Ob(Lt),j=new fS(R,C,ve,ye,at,J),ot=new LS(R,Lt),ht=new mS,$=new bS(ve),L=new Lb(R,C,pt,nt,m,l),lt=new AS(R,nt,ye),At=new NS(O,Ne,ye,pt),Y=new Ub(O,ve,Ne),ct=new Zb(O,ve,Ne),Ne.programs=j.programs,R.capabilities=ye,R.extensions=ve,R.properties=Lt,R.renderLists=ht,R.shadowMap=lt,R.state=pt,R.info=Ne}y!==gn&&(D=new tM(y,e.width,e.height,a,s,r));let it=new bf(R,O);this.xr=it,this.getContext=function(){return O},this.getContextAttributes=function(){return O.getContextAttributes()},this.forceContextLoss=function(){let w=ve.get("WEBGL_lose_context");w&&w.loseContext()},this.forceContextRestore=function(){let w=ve.get("WEBGL_lose_context");w&&w.restoreContext()},this.getPixelRatio=function(){return mt},this.setPixelRatio=function(w){w!==void 0&&(mt=w,this.setSize(yt,Et,!1))},this.getSize=function(w){return w.set(yt,Et)},this.setSize=function(w,U,q=!0){if(it.isPresenting){Rt("WebGLRenderer: Can't change size while VR device is presenting.");return}yt=w,Et=U,e.width=Math.floor(w*mt),e.height=Math.floor(U*mt),q===!0&&(e.style.width=w+"px",e.style.height=U+"px"),D!==null&&D.setSize(e.width,e.height),this.setViewport(0,0,w,U)},this.getDrawingBufferSize=function(w){return w.set(yt*mt,Et*mt).floor()},this.setDrawingBufferSize=function(w,U,q){yt=w,Et=U,mt=q,e.width=Math.floor(w*q),e.height=Math.floor(U*q),this.setViewport(0,0,w,U)},this.setEffects=function(w){if(y===gn){Nt("WebGLRenderer: setEffects() requires outputBufferType set to HalfFloatType or FloatType.");return}if(w){for(let U=0;U<w.length;U++)if(w[U].isOutputPass===!0){Rt("WebGLRenderer: OutputPass is not needed in setEffects(). Tone mapping and color space conversion are applied automatically.");break}}D.setEffects(w||[])},this.getCurrentViewport=function(w){return w.copy(et)},this.getViewport=function(w){return w.copy(Pt)},this.setViewport=function(w,U,q,z){w.isVector4?Pt.set(w.x,w.y,w.z,w.w):Pt.set(w,U,q,z),pt.viewport(et.copy(Pt).multiplyScalar(Dn()).round())},this.getScissor=function(w){return w.copy(te)},this.setScissor=function(w,U,q,z){w.isVector4?te.set(w.x,w.y,w.z,w.w):te.set(w,U,q,z),pt.scissor(xt.copy(te).multiplyScalar(Dn()).round())},this.getScissorTest=function(){return oe},this.setScissorTest=function(w){pt.setScissorTest(oe=w)},this.setOpaqueSort=function(w){Ut=w},this.setTransparentSort=function(w){Ee=w},this.getClearColor=function(w){return w.copy(L.getClearColor())},this.setClearColor=function(){L.setClearColor(...arguments)},this.getClearAlpha=function(){return L.getClearAlpha()},this.setClearAlpha=function(){L.setClearAlpha(...arguments)},this.clear=function(w=!0,U=!0,q=!0){let z=0;if(w){let H=!1;if(Q!==null){let ft=Q.texture.format;H=g.has(ft)}if(H){let ft=Q.texture.type,bt=p.has(ft),ut=L.getClearColor(),vt=L.getClearAlpha(),Tt=ut.r,Bt=ut.g,Yt=ut.b;bt?(v[0]=Tt,v[1]=Bt,v[2]=Yt,v[3]=vt,O.clearBufferuiv(O.COLOR,0,v)):(M[0]=Tt,M[1]=Bt,M[2]=Yt,M[3]=vt,O.clearBufferiv(O.COLOR,0,M))}else z|=O.COLOR_BUFFER_BIT}U&&(z|=O.DEPTH_BUFFER_BIT,this.state.buffers.depth.setMask(!0)),q&&(z|=O.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),z!==0&&O.clear(z)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.setNodesHandler=function(w){w.setRenderer(this),F=w},this.dispose=function(){e.removeEventListener("webglcontextlost",Ct,!1),e.removeEventListener("webglcontextrestored",zt,!1),e.removeEventListener("webglcontextcreationerror",gt,!1),L.dispose(),ht.dispose(),$.dispose(),Ot.dispose(),Lt.dispose(),C.dispose(),nt.dispose(),V.dispose(),at.dispose(),At.dispose(),j.dispose(),it.dispose(),it.removeEventListener("sessionstart",Hf),it.removeEventListener("sessionend",Wf),is.stop()};function Ct(w){w.preventDefault(),nf("WebGLRenderer: Context Lost."),P=!0}function zt(){nf("WebGLRenderer: Context Restored."),P=!1;let w=Ne.autoReset,U=lt.enabled,q=lt.autoUpdate,z=lt.needsUpdate,H=lt.type;Gt(),Ne.autoReset=w,lt.enabled=U,lt.autoUpdate=q,lt.needsUpdate=z,lt.type=H}function gt(w){Nt("WebGLRenderer: A WebGL context could not be created. Reason: ",w.statusMessage)}function le(w){let U=w.target;U.removeEventListener("dispose",le),He(U)}function He(w){Li(w),Lt.remove(w)}function Li(w){let U=Lt.get(w).programs;U!==void 0&&(U.forEach(function(q){j.releaseProgram(q)}),w.isShaderMaterial&&j.releaseShaderCache(w))}this.renderBufferDirect=function(w,U,q,z,H,ft){U===null&&(U=Pn);let bt=H.isMesh&&H.matrixWorld.determinantAffine()<0,ut=b0(w,U,q,z,H);pt.setMaterial(z,bt);let vt=q.index,Tt=1;if(z.wireframe===!0){if(vt=V.getWireframeAttribute(q),vt===void 0)return;Tt=2}let Bt=q.drawRange,Yt=q.attributes.position,Mt=Bt.start*Tt,$t=(Bt.start+Bt.count)*Tt;ft!==null&&(Mt=Math.max(Mt,ft.start*Tt),$t=Math.min($t,(ft.start+ft.count)*Tt)),vt!==null?(Mt=Math.max(Mt,0),$t=Math.min($t,vt.count)):Yt!=null&&(Mt=Math.max(Mt,0),$t=Math.min($t,Yt.count));let Pe=$t-Mt;if(Pe<0||Pe===1/0)return;at.setup(H,z,ut,q,vt);let de,fe=Y;if(vt!==null&&(de=S.get(vt),fe=ct,fe.setIndex(de)),H.isMesh)z.wireframe===!0?(pt.setLineWidth(z.wireframeLinewidth*Dn()),fe.setMode(O.LINES)):fe.setMode(O.TRIANGLES);else if(H.isLine){let tn=z.linewidth;tn===void 0&&(tn=1),pt.setLineWidth(tn*Dn()),H.isLineSegments?fe.setMode(O.LINES):H.isLineLoop?fe.setMode(O.LINE_LOOP):fe.setMode(O.LINE_STRIP)}else H.isPoints?fe.setMode(O.POINTS):H.isSprite&&fe.setMode(O.TRIANGLES);if(H.isBatchedMesh)if(ve.get("WEBGL_multi_draw"))fe.renderMultiDraw(H._multiDrawStarts,H._multiDrawCounts,H._multiDrawCount);else{let tn=H._multiDrawStarts,St=H._multiDrawCounts,ln=H._multiDrawCount,ee=vt?S.get(vt).bytesPerElement:1,ss=Lt.get(z).currentProgram.getUniforms();for(let en=0;en<ln;en++)ss.setValue(O,"_gl_DrawID",en),fe.render(tn[en]/ee,St[en])}else if(H.isInstancedMesh)fe.renderInstances(Mt,Pe,H.count);else if(q.isInstancedBufferGeometry){let tn=q._maxInstanceCount!==void 0?q._maxInstanceCount:1/0,St=Math.min(q.instanceCount,tn);fe.renderInstances(Mt,Pe,St)}else fe.render(Mt,Pe)};function Gf(w,U,q,z){F!==null&&w.isNodeMaterial&&F.setObject(z,w),Le===!0&&J.setState(w,q,!1),w.transparent===!0&&w.side===on&&w.forceSinglePass===!1?(w.side=fn,w.needsUpdate=!0,Nr(w,U,z),w.side=Qi,w.needsUpdate=!0,Nr(w,U,z),w.side=on):Nr(w,U,z)}this.compile=function(w,U,q=null){q===null&&(q=w),F!==null&&F.renderStart(w,U,q),A=$.get(q),A.init(U),T.push(A),q.traverseVisible(function(H){H.isLight&&H.layers.test(U.layers)&&(A.pushLight(H),H.castShadow&&A.pushShadow(H))}),w!==q&&w.traverseVisible(function(H){H.isLight&&H.layers.test(U.layers)&&(A.pushLight(H),H.castShadow&&A.pushShadow(H))}),A.setupLights(),F!==null&&F.updateLights(A.state.lightsArray),dn=this.localClippingEnabled,Le=J.init(this.clippingPlanes,dn),Le===!0&&J.setGlobalState(this.clippingPlanes,U),F!==null&&lt.render(A.state.shadowsArray,q,U);let z=new Set;return w.traverse(function(H){if(!(H.isMesh||H.isPoints||H.isLine||H.isSprite))return;let ft=H.material;if(ft)if(Array.isArray(ft))for(let bt=0;bt<ft.length;bt++){let ut=ft[bt];Gf(ut,q,U,H),z.add(ut)}else Gf(ft,q,U,H),z.add(ft)}),A=T.pop(),F!==null&&F.renderEnd(),z},this.compileAsync=function(w,U,q=null){let z=this.compile(w,U,q);return new Promise(H=>{function ft(){if(z.forEach(function(bt){let vt=Lt.get(bt).currentProgram;(vt===void 0||vt.isReady())&&z.delete(bt)}),z.size===0){H(w);return}setTimeout(ft,10)}ve.get("KHR_parallel_shader_compile")!==null?ft():setTimeout(ft,10)})};let mu=null;function y0(w){mu&&mu(w)}function Hf(){is.stop()}function Wf(){is.start()}let is=new pg;is.setAnimationLoop(y0),typeof self<"u"&&is.setContext(self),this.setAnimationLoop=function(w){mu=w,it.setAnimationLoop(w),w===null?is.stop():is.start()},it.addEventListener("sessionstart",Hf),it.addEventListener("sessionend",Wf),this.render=function(w,U){if(U!==void 0&&U.isCamera!==!0){Nt("WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(P===!0)return;F!==null&&F.renderStart(w,U);let q=it.enabled===!0&&it.isPresenting===!0,z=D!==null&&(Q===null||q)&&D.begin(R,Q);if(w.matrixWorldAutoUpdate===!0&&w.updateMatrixWorld(),U.parent===null&&U.matrixWorldAutoUpdate===!0&&U.updateMatrixWorld(),it.enabled===!0&&it.isPresenting===!0&&(D===null||D.isCompositing()===!1)&&(it.cameraAutoUpdate===!0&&it.updateCamera(U),U=it.getCamera()),w.isScene===!0&&w.onBeforeRender(R,w,U,Q),A=$.get(w,T.length),A.init(U),A.state.textureUnits=Ot.getTextureUnits(),T.push(A),we.multiplyMatrices(U.projectionMatrix,U.matrixWorldInverse),U.isArrayCamera?Ze.setFromArrayCamera(U):qt.setFromProjectionMatrix(we,Bn,U.reversedDepth),dn=this.localClippingEnabled,Le=J.init(this.clippingPlanes,dn),E=ht.get(w,x.length),E.init(),x.push(E),this.info.render.frame++,it.enabled===!0&&it.isPresenting===!0){let bt=R.xr.getDepthSensingMesh();bt!==null&&gu(bt,U,-1/0,R.sortObjects)}gu(w,U,0,R.sortObjects),E.finish(),F!==null&&F.updateLights(A.state.lightsArray),R.sortObjects===!0&&E.sort(Ut,Ee),In=it.enabled===!1||it.isPresenting===!1||it.hasDepthSensing()===!1,In&&L.addToRenderList(E,w),this.info.autoReset===!0&&this.info.reset(),Le===!0&&J.beginShadows();let H=A.state.shadowsArray;if(lt.render(H,w,U),Le===!0&&J.endShadows(),(z&&D.hasRenderPass())===!1){let bt=E.opaque,ut=E.transmissive;if(A.setupLights(),U.isArrayCamera){let vt=U.cameras;if(ut.length>0)for(let Tt=0,Bt=vt.length;Tt<Bt;Tt++){let Yt=vt[Tt];qf(bt,ut,w,Yt)}In&&L.render(w);for(let Tt=0,Bt=vt.length;Tt<Bt;Tt++){let Yt=vt[Tt];Xf(E,w,Yt,Yt.viewport)}}else ut.length>0&&qf(bt,ut,w,U),In&&L.render(w),Xf(E,w,U)}Q!==null&&B===0&&(Ot.updateMultisampleRenderTarget(Q),Ot.updateRenderTargetMipmap(Q)),z&&D.end(R),w.isScene===!0&&w.onAfterRender(R,w,U),at.resetDefaultState(),G=-1,tt=null,T.pop(),T.length>0?(A=T[T.length-1],Ot.setTextureUnits(A.state.textureUnits),Le===!0&&J.setGlobalState(R.clippingPlanes,A.state.camera)):A=null,x.pop(),x.length>0?E=x[x.length-1]:E=null,F!==null&&F.renderEnd()};function gu(w,U,q,z){if(w.visible===!1)return;if(w.layers.test(U.layers)){if(w.isGroup)q=w.renderOrder;else if(w.isLOD)w.autoUpdate===!0&&w.update(U);else if(w.isLight)A.pushLight(w),w.castShadow&&A.pushShadow(w);else if(w.isSprite){let bt=U.isArrayCamera?Ze:qt;if(!w.frustumCulled||w.intersectsFrustum(bt)){z&&Ge.setFromMatrixPosition(w.matrixWorld).applyMatrix4(we);let ut=nt.update(w),vt=w.material;vt.visible&&E.push(w,ut,vt,q,Ge.z,null,U)}}else if(w.isMesh||w.isLine||w.isPoints){let bt=U.isArrayCamera?Ze:qt;if(!w.frustumCulled||w.intersectsFrustum(bt)){let ut=nt.update(w),vt=w.material;if(z&&(w.boundingSphere!==void 0?(w.boundingSphere===null&&w.computeBoundingSphere(),Ge.copy(w.boundingSphere.center)):(ut.boundingSphere===null&&ut.computeBoundingSphere(),Ge.copy(ut.boundingSphere.center)),Ge.applyMatrix4(w.matrixWorld).applyMatrix4(we)),Array.isArray(vt)){let Tt=ut.groups;for(let Bt=0,Yt=Tt.length;Bt<Yt;Bt++){let Mt=Tt[Bt],$t=vt[Mt.materialIndex];$t&&$t.visible&&E.push(w,ut,$t,q,Ge.z,Mt,U)}}else vt.visible&&E.push(w,ut,vt,q,Ge.z,null,U)}}}let ft=w.children;for(let bt=0,ut=ft.length;bt<ut;bt++)gu(ft[bt],U,q,z)}function Xf(w,U,q,z){let{opaque:H,transmissive:ft,transparent:bt}=w;A.setupLightsView(q),Le===!0&&J.setGlobalState(R.clippingPlanes,q),z&&pt.viewport(et.copy(z)),H.length>0&&da(H,U,q),ft.length>0&&da(ft,U,q),bt.length>0&&da(bt,U,q),pt.buffers.depth.setTest(!0),pt.buffers.depth.setMask(!0),pt.buffers.color.setMask(!0),pt.setPolygonOffset(!1)}function qf(w,U,q,z){if((q.isScene===!0?q.overrideMaterial:null)!==null)return;if(A.state.transmissionRenderTarget[z.id]===void 0){let Mt=ve.has("EXT_color_buffer_half_float")||ve.has("EXT_color_buffer_float");A.state.transmissionRenderTarget[z.id]=new An(1,1,{generateMipmaps:!0,type:Mt?Kn:gn,minFilter:Ci,samples:Math.max(4,ye.samples),stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,colorSpace:Jt.workingColorSpace})}let ft=A.state.transmissionRenderTarget[z.id],bt=z.viewport||et;ft.setSize(bt.z*R.transmissionResolutionScale,bt.w*R.transmissionResolutionScale);let ut=R.getRenderTarget(),vt=R.getActiveCubeFace(),Tt=R.getActiveMipmapLevel();R.setRenderTarget(ft),R.getClearColor(Z),dt=R.getClearAlpha(),dt<1&&R.setClearColor(16777215,.5),R.clear(),In&&L.render(q);let Bt=R.toneMapping;R.toneMapping=ui;let Yt=z.viewport;if(z.viewport!==void 0&&(z.viewport=void 0),A.setupLightsView(z),Le===!0&&J.setGlobalState(R.clippingPlanes,z),da(w,q,z),Ot.updateMultisampleRenderTarget(ft),Ot.updateRenderTargetMipmap(ft),ve.has("WEBGL_multisampled_render_to_texture")===!1){let Mt=!1;for(let $t=0,Pe=U.length;$t<Pe;$t++){let de=U[$t],{object:fe,geometry:tn,material:St,group:ln}=de;if(St.side===on&&fe.layers.test(z.layers)){let ee=St.side;St.side=fn,St.needsUpdate=!0,Yf(fe,q,z,tn,St,ln),St.side=ee,St.needsUpdate=!0,Mt=!0}}Mt===!0&&(Ot.updateMultisampleRenderTarget(ft),Ot.updateRenderTargetMipmap(ft))}R.setRenderTarget(ut,vt,Tt),R.setClearColor(Z,dt),Yt!==void 0&&(z.viewport=Yt),R.toneMapping=Bt}function da(w,U,q){let z=U.isScene===!0?U.overrideMaterial:null;for(let H=0,ft=w.length;H<ft;H++){let bt=w[H],{object:ut,geometry:vt,group:Tt}=bt,Bt=bt.material;Bt.allowOverride===!0&&z!==null&&(Bt=z),ut.layers.test(q.layers)&&Yf(ut,U,q,vt,Bt,Tt)}}function Yf(w,U,q,z,H,ft){F!==null&&H.isNodeMaterial&&F.setObject(w,H),w.onBeforeRender(R,U,q,z,H,ft),w.modelViewMatrix.multiplyMatrices(q.matrixWorldInverse,w.matrixWorld),w.normalMatrix.getNormalMatrix(w.modelViewMatrix),H.onBeforeRender(R,U,q,z,w,ft),H.transparent===!0&&H.side===on&&H.forceSinglePass===!1?(H.side=fn,H.needsUpdate=!0,R.renderBufferDirect(q,U,z,H,w,ft),H.side=Qi,H.needsUpdate=!0,R.renderBufferDirect(q,U,z,H,w,ft),H.side=on):R.renderBufferDirect(q,U,z,H,w,ft),w.onAfterRender(R,U,q,z,H,ft)}function $f(w){let U=0;for(let q of w)q.texture!==null&&U++;return U}function Nr(w,U,q){U.isScene!==!0&&(U=Pn);let z=Lt.get(w),H=A.state.lights,ft=A.state.shadowsArray,bt=H.state.version,ut=j.getParameters(w,H.state,ft,U,q,A.state.lightProbeGridArray),vt=j.getProgramCacheKey(ut),Tt=z.programs;z.environment=w.isMeshStandardMaterial||w.isMeshLambertMaterial||w.isMeshPhongMaterial?U.environment:null,z.fog=U.fog;let Bt=w.isMeshStandardMaterial||w.isMeshLambertMaterial&&!w.envMap||w.isMeshPhongMaterial&&!w.envMap;z.envMap=C.get(w.envMap||z.environment,Bt),z.envMapRotation=z.environment!==null&&w.envMap===null?U.environmentRotation:w.envMapRotation,Tt===void 0&&(w.addEventListener("dispose",le),Tt=new Map,z.programs=Tt,z.programVariants=new Map);let Yt=Tt.get(vt);if(Yt!==void 0){if(z.currentProgram===Yt&&z.lightsStateVersion===bt)return Jf(w,ut),Yt}else ut.uniforms=j.getUniforms(w),F!==null&&w.isNodeMaterial&&F.build(w,q,ut),w.onBeforeCompile(ut,R),Yt=j.acquireProgram(ut,vt),Tt.set(vt,Yt),z.uniforms=ut.uniforms;let Mt=z.uniforms;return(!w.isShaderMaterial&&!w.isRawShaderMaterial||w.clipping===!0)&&(Mt.clippingPlanes=J.uniform),Jf(w,ut),z.needsLights=S0(w),z.lightsStateVersion=bt,z.needsLights&&(Mt.ambientLightColor.value=H.state.ambient,Mt.lightProbe.value=H.state.probe,Mt.sunLights.value=H.state.sun,Mt.sunLightShadows.value=H.state.sunShadow,Mt.directionalLights.value=H.state.directional,Mt.directionalLightShadows.value=H.state.directionalShadow,Mt.spotLights.value=H.state.spot,Mt.spotLightShadows.value=H.state.spotShadow,Mt.rectAreaLights.value=H.state.rectArea,Mt.ltc_1.value=H.state.rectAreaLTC1,Mt.ltc_2.value=H.state.rectAreaLTC2,Mt.pointLights.value=H.state.point,Mt.pointLightShadows.value=H.state.pointShadow,Mt.hemisphereLights.value=H.state.hemi,Mt.sunShadowMatrix.value=H.state.sunShadowMatrix,Mt.sunShadowCascade.value=H.state.sunShadowCascade,Mt.directionalShadowMatrix.value=H.state.directionalShadowMatrix,Mt.spotLightMatrix.value=H.state.spotLightMatrix,Mt.spotLightMap.value=H.state.spotLightMap,Mt.pointShadowMatrix.value=H.state.pointShadowMatrix),z.numLightProbeGrids=$f(A.state.lightProbeGridArray),z.currentProgram=Yt,z.uniformsList=null,Yt}function x0(w,U,q,z,H){let ft=Lt.get(w),bt=ft.currentProgram.id+","+z+","+H,ut=ft.programVariants.get(bt);return ut===void 0?(ut=Nr(w,U,q),ft.programVariants.set(bt,ut)):(ft.currentProgram=ut,ft.uniformsList=null,ft.outputColorSpace=z,ft.toneMapping=H),ut}function Zf(w){if(w.uniformsList===null){let U=w.currentProgram.getUniforms();w.uniformsList=Cr.seqWithValue(U.seq,w.uniforms)}return w.uniformsList}function Jf(w,U){let q=Lt.get(w);q.outputColorSpace=U.outputColorSpace,q.batching=U.batching,q.batchingColor=U.batchingColor,q.instancing=U.instancing,q.instancingColor=U.instancingColor,q.instancingMorph=U.instancingMorph,q.skinning=U.skinning,q.morphTargets=U.morphTargets,q.morphNormals=U.morphNormals,q.morphColors=U.morphColors,q.morphTargetsCount=U.morphTargetsCount,q.numClippingPlanes=U.numClippingPlanes,q.numIntersection=U.numClipIntersection,q.vertexAlphas=U.vertexAlphas,q.vertexTangents=U.vertexTangents,q.toneMapping=U.toneMapping}function b0(w,U,q,z,H){U.isScene!==!0&&(U=Pn),Ot.resetTextureUnits();let ft=U.fog,bt=z.isMeshStandardMaterial||z.isMeshLambertMaterial||z.isMeshPhongMaterial?U.environment:null,ut=Q===null?R.outputColorSpace:Q.isXRRenderTarget===!0?Q.texture.colorSpace:Jt.workingColorSpace,vt=z.isMeshStandardMaterial||z.isMeshLambertMaterial&&!z.envMap||z.isMeshPhongMaterial&&!z.envMap,Tt=C.get(z.envMap||bt,vt),Bt=z.vertexColors===!0&&!!q.attributes.color&&q.attributes.color.itemSize===4,Yt=!!q.attributes.tangent&&(!!z.normalMap||z.anisotropy>0),Mt=!!q.morphAttributes.position,$t=!!q.morphAttributes.normal,Pe=!!q.morphAttributes.color,de=ui;z.toneMapped&&(Q===null||Q.isXRRenderTarget===!0)&&(de=R.toneMapping);let fe=q.morphAttributes.position||q.morphAttributes.normal||q.morphAttributes.color,tn=fe!==void 0?fe.length:0,St=Lt.get(z),ln=A.state.lights;if(Le===!0&&(dn===!0||w!==tt)){let Te=w===tt&&z.id===G;J.setState(z,w,Te)}let ee=!1,ss=!1;z.version===St.__version?St.needsLights&&St.lightsStateVersion!==ln.state.version||H.isBatchedMesh&&St.batching===!1||!H.isBatchedMesh&&St.batching===!0||H.isBatchedMesh&&St.batchingColor===!0&&H._colorsTexture===null||H.isBatchedMesh&&St.batchingColor===!1&&H._colorsTexture!==null||H.isInstancedMesh&&St.instancing===!1||!H.isInstancedMesh&&St.instancing===!0||H.isSkinnedMesh&&St.skinning===!1||!H.isSkinnedMesh&&St.skinning===!0||H.isInstancedMesh&&St.instancingColor===!0&&H.instanceColor===null||H.isInstancedMesh&&St.instancingColor===!1&&H.instanceColor!==null||H.isInstancedMesh&&St.instancingMorph===!0&&H.morphTexture===null||H.isInstancedMesh&&St.instancingMorph===!1&&H.morphTexture!==null||St.envMap!==Tt||z.fog===!0&&St.fog!==ft||St.numClippingPlanes!==void 0&&(St.numClippingPlanes!==J.numPlanes||St.numIntersection!==J.numIntersection)||St.vertexAlphas!==Bt||St.vertexTangents!==Yt||St.morphTargets!==Mt||St.morphNormals!==$t||St.morphColors!==Pe||St.morphTargetsCount!==tn||St.numLightProbeGrids!==$f(A.state.lightProbeGridArray)?ee=!0:(St.outputColorSpace!==ut||St.toneMapping!==de)&&(ss=!0):(ee=!0,St.__version=z.version);let en=St.currentProgram;(ee===!0||ss===!0)&&(en=ss===!0?x0(z,U,H,ut,de):Nr(z,U,H),F&&z.isNodeMaterial&&F.onUpdateProgram(z,en,St));let pa=!1,Ni=!1,rs=!1,Kt=en.getUniforms(),Je=St.uniforms;if(pt.useProgram(en.program)&&(pa=!0,Ni=!0,rs=!0),z.id!==G&&(G=z.id,Ni=!0),pa||tt!==w){pt.buffers.depth.getReversed()&&w.reversedDepth!==!0&&(w._reversedDepth=!0,w.updateProjectionMatrix()),Kt.setValue(O,"projectionMatrix",w.projectionMatrix),Kt.setValue(O,"viewMatrix",w.matrixWorldInverse);let We=Kt.map.cameraPosition;We!==void 0&&We.setValue(O,Qn.setFromMatrixPosition(w.matrixWorld)),ye.logarithmicDepthBuffer&&Kt.setValue(O,"logDepthBufFC",2/(Math.log(w.far+1)/Math.LN2)),(z.isMeshPhongMaterial||z.isMeshToonMaterial||z.isMeshLambertMaterial||z.isMeshBasicMaterial||z.isMeshStandardMaterial||z.isShaderMaterial)&&Kt.setValue(O,"isOrthographic",w.isOrthographicCamera===!0),tt!==w&&(tt=w,Ni=!0,rs=!0)}if(St.needsLights&&(ln.state.sunShadowMap.length>0&&Kt.setValue(O,"sunShadowMap",ln.state.sunShadowMap,Ot),ln.state.directionalShadowMap.length>0&&Kt.setValue(O,"directionalShadowMap",ln.state.directionalShadowMap,Ot),ln.state.spotShadowMap.length>0&&Kt.setValue(O,"spotShadowMap",ln.state.spotShadowMap,Ot),ln.state.pointShadowMap.length>0&&Kt.setValue(O,"pointShadowMap",ln.state.pointShadowMap,Ot)),H.isSkinnedMesh){Kt.setOptional(O,H,"bindMatrix"),Kt.setOptional(O,H,"bindMatrixInverse");let Te=H.skeleton;Te&&(Te.boneTexture===null&&Te.computeBoneTexture(),Kt.setValue(O,"boneTexture",Te.boneTexture,Ot))}H.isBatchedMesh&&(Kt.setOptional(O,H,"batchingTexture"),Kt.setValue(O,"batchingTexture",H._matricesTexture,Ot),Kt.setOptional(O,H,"batchingIdTexture"),Kt.setValue(O,"batchingIdTexture",H._indirectTexture,Ot),Kt.setOptional(O,H,"batchingColorTexture"),H._colorsTexture!==null&&Kt.setValue(O,"batchingColorTexture",H._colorsTexture,Ot));let Vn=q.morphAttributes;if((Vn.position!==void 0||Vn.normal!==void 0||Vn.color!==void 0)&&K.update(H,q,en),(Ni||St.receiveShadow!==H.receiveShadow)&&(St.receiveShadow=H.receiveShadow,Kt.setValue(O,"receiveShadow",H.receiveShadow)),(z.isMeshStandardMaterial||z.isMeshLambertMaterial||z.isMeshPhongMaterial)&&z.envMap===null&&U.environment!==null&&(Je.envMapIntensity.value=U.environmentIntensity),Je.dfgLUT!==void 0&&(Je.dfgLUT.value=FS()),Ni){if(Kt.setValue(O,"toneMappingExposure",R.toneMappingExposure),St.needsLights&&M0(Je,rs),ft&&z.fog===!0&&ot.refreshFogUniforms(Je,ft),ot.refreshMaterialUniforms(Je,z,mt,Et,A.state.transmissionRenderTarget[w.id]),St.needsLights&&St.numLightProbeGrids>0){let Te=b,We=0;for(let pi of A.state.lightProbeGridArray)pi.texture!==null&&(Te.textures[We]=pi.texture,Te.min[We]=pi.boundingBox.min,Te.max[We]=pi.boundingBox.max,Te.resolution[We]=pi.resolution,We++);for(let pi in Te)Te[pi].length=We;Je.probesSH.value=Te.textures,Je.probesMin.value=Te.min,Je.probesMax.value=Te.max,Je.probesResolution.value=Te.resolution}Cr.upload(O,Zf(St),Je,Ot)}if(z.isShaderMaterial&&z.uniformsNeedUpdate===!0&&(Cr.upload(O,Zf(St),Je,Ot),z.uniformsNeedUpdate=!1),z.isSpriteMaterial&&Kt.setValue(O,"center",H.center),Kt.setValue(O,"modelViewMatrix",H.modelViewMatrix),Kt.setValue(O,"normalMatrix",H.normalMatrix),Kt.setValue(O,"modelMatrix",H.matrixWorld),z.uniformsGroups!==void 0){let Te=z.uniformsGroups;for(let We=0,pi=Te.length;We<pi;We++){let jf=Te[We];At.update(jf,en),At.bind(jf,en)}}return en}function M0(w,U){w.ambientLightColor.needsUpdate=U,w.lightProbe.needsUpdate=U,w.sunLights.needsUpdate=U,w.sunLightShadows.needsUpdate=U,w.directionalLights.needsUpdate=U,w.directionalLightShadows.needsUpdate=U,w.pointLights.needsUpdate=U,w.pointLightShadows.needsUpdate=U,w.spotLights.needsUpdate=U,w.spotLightShadows.needsUpdate=U,w.rectAreaLights.needsUpdate=U,w.hemisphereLights.needsUpdate=U}function S0(w){return w.isMeshLambertMaterial||w.isMeshToonMaterial||w.isMeshPhongMaterial||w.isMeshStandardMaterial||w.isShadowMaterial||w.isShaderMaterial&&w.lights===!0}this.getActiveCubeFace=function(){return X},this.getActiveMipmapLevel=function(){return B},this.getRenderTarget=function(){return Q},this.setRenderTargetTextures=function(w,U,q){let z=Lt.get(w);z.__autoAllocateDepthBuffer=w.resolveDepthBuffer===!1,z.__autoAllocateDepthBuffer===!1&&(z.__useRenderToTexture=!1),Lt.get(w.texture).__webglTexture=U,Lt.get(w.depthTexture).__webglTexture=z.__autoAllocateDepthBuffer?void 0:q,z.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(w,U){let q=Lt.get(w);q.__webglFramebuffer=U,q.__useDefaultFramebuffer=U===void 0},this.setRenderTarget=function(w,U=0,q=0){Q=w,X=U,B=q;let z=null,H=!1,ft=!1;if(w){let ut=Lt.get(w);if(ut.__useDefaultFramebuffer!==void 0){pt.bindFramebuffer(O.FRAMEBUFFER,ut.__webglFramebuffer),et.copy(w.viewport),xt.copy(w.scissor),Dt=w.scissorTest,pt.viewport(et),pt.scissor(xt),pt.setScissorTest(Dt),G=-1;return}else if(ut.__webglFramebuffer===void 0)Ot.setupRenderTarget(w);else if(ut.__hasExternalTextures)Ot.rebindTextures(w,Lt.get(w.texture).__webglTexture,Lt.get(w.depthTexture).__webglTexture);else if(w.depthBuffer){let Bt=w.depthTexture;if(ut.__boundDepthTexture!==Bt){if(Bt!==null&&Lt.has(Bt)&&(w.width!==Bt.image.width||w.height!==Bt.image.height))throw new Error("THREE.WebGLRenderer: Attached DepthTexture is initialized to the incorrect size.");Ot.setupDepthRenderbuffer(w)}}let vt=w.texture;(vt.isData3DTexture||vt.isDataArrayTexture||vt.isCompressedArrayTexture)&&(ft=!0);let Tt=Lt.get(w).__webglFramebuffer;w.isWebGLCubeRenderTarget?(Array.isArray(Tt[U])?z=Tt[U][q]:z=Tt[U],H=!0):w.samples>0&&Ot.useMultisampledRTT(w)===!1?z=Lt.get(w).__webglMultisampledFramebuffer:Array.isArray(Tt)?z=Tt[q]:z=Tt,et.copy(w.viewport),xt.copy(w.scissor),Dt=w.scissorTest}else et.copy(Pt).multiplyScalar(mt).floor(),xt.copy(te).multiplyScalar(mt).floor(),Dt=oe;if(q!==0&&(z=k),pt.bindFramebuffer(O.FRAMEBUFFER,z)&&pt.drawBuffers(w,z),pt.viewport(et),pt.scissor(xt),pt.setScissorTest(Dt),H){let ut=Lt.get(w.texture);O.framebufferTexture2D(O.FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_CUBE_MAP_POSITIVE_X+U,ut.__webglTexture,q)}else if(ft){let ut=U;for(let vt=0;vt<w.textures.length;vt++){let Tt=Lt.get(w.textures[vt]);O.framebufferTextureLayer(O.FRAMEBUFFER,O.COLOR_ATTACHMENT0+vt,Tt.__webglTexture,q,ut)}}else if(w!==null&&q!==0){let ut=Lt.get(w.texture);O.framebufferTexture2D(O.FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_2D,ut.__webglTexture,q)}G=-1};function Kf(w){let U=Lt.get(w);return(U.__readFormat!==w.format||U.__readType!==w.type)&&(U.__readFormat=w.format,U.__readType=w.type,U.__formatReadable=ye.textureFormatReadable(w.format),U.__typeReadable=ye.textureTypeReadable(w.type)),U}this.readRenderTargetPixels=function(w,U,q,z,H,ft,bt,ut=0){if(!(w&&w.isWebGLRenderTarget)){Nt("WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let vt=Lt.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&bt!==void 0&&(vt=vt[bt],Array.isArray(vt)&&(vt=vt[0])),vt){pt.bindFramebuffer(O.FRAMEBUFFER,vt);try{let Tt=w.textures[ut],Bt=Tt.format,Yt=Tt.type;w.textures.length>1&&O.readBuffer(O.COLOR_ATTACHMENT0+ut);let Mt=Kf(Tt);if(Mt.__formatReadable===!1){Nt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(Mt.__typeReadable===!1){Nt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}U>=0&&U<=w.width-z&&q>=0&&q<=w.height-H&&O.readPixels(U,q,z,H,st.convert(Bt),st.convert(Yt),ft)}finally{let Tt=Q!==null?Lt.get(Q).__webglFramebuffer:null;pt.bindFramebuffer(O.FRAMEBUFFER,Tt)}}},this.readRenderTargetPixelsAsync=async function(w,U,q,z,H,ft,bt,ut=0){if(!(w&&w.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let vt=Lt.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&bt!==void 0&&(vt=vt[bt],Array.isArray(vt)&&(vt=vt[0])),vt)if(U>=0&&U<=w.width-z&&q>=0&&q<=w.height-H){pt.bindFramebuffer(O.FRAMEBUFFER,vt);let Tt=w.textures[ut],Bt=Tt.format,Yt=Tt.type;w.textures.length>1&&O.readBuffer(O.COLOR_ATTACHMENT0+ut);let Mt=Kf(Tt);if(Mt.__formatReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(Mt.__typeReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");let $t=O.createBuffer();O.bindBuffer(O.PIXEL_PACK_BUFFER,$t),O.bufferData(O.PIXEL_PACK_BUFFER,ft.byteLength,O.STREAM_READ),O.readPixels(U,q,z,H,st.convert(Bt),st.convert(Yt),0),O.bindBuffer(O.PIXEL_PACK_BUFFER,null);let Pe=Q!==null?Lt.get(Q).__webglFramebuffer:null;pt.bindFramebuffer(O.FRAMEBUFFER,Pe);let de=O.fenceSync(O.SYNC_GPU_COMMANDS_COMPLETE,0);return O.flush(),await Um(O,de,4),O.bindBuffer(O.PIXEL_PACK_BUFFER,$t),O.getBufferSubData(O.PIXEL_PACK_BUFFER,0,ft),O.bindBuffer(O.PIXEL_PACK_BUFFER,null),O.deleteBuffer($t),O.deleteSync(de),ft}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(w,U=null,q=0){let z=Math.pow(2,-q),H=Math.floor(w.image.width*z),ft=Math.floor(w.image.height*z),bt=U!==null?U.x:0,ut=U!==null?U.y:0;Ot.setTexture2D(w,0),O.copyTexSubImage2D(O.TEXTURE_2D,q,0,0,bt,ut,H,ft),pt.unbindTexture()},this.copyTextureToTexture=function(w,U,q=null,z=null,H=0,ft=0){let bt,ut,vt,Tt,Bt,Yt,Mt,$t,Pe,de=w.isCompressedTexture?w.mipmaps[ft]:w.image;if(q!==null)bt=q.max.x-q.min.x,ut=q.max.y-q.min.y,vt=q.isBox3?q.max.z-q.min.z:1,Tt=q.min.x,Bt=q.min.y,Yt=q.isBox3?q.min.z:0;else{let Kt=Math.pow(2,-H);bt=Math.floor(de.width*Kt),ut=Math.floor(de.height*Kt),w.isDataArrayTexture?vt=de.depth:w.isData3DTexture?vt=Math.floor(de.depth*Kt):vt=1,Tt=0,Bt=0,Yt=0}z!==null?(Mt=z.x,$t=z.y,Pe=z.z):(Mt=0,$t=0,Pe=0);let fe=st.convert(U.format),tn=st.convert(U.type),St;U.isData3DTexture?(Ot.setTexture3D(U,0),St=O.TEXTURE_3D):U.isDataArrayTexture||U.isCompressedArrayTexture?(Ot.setTexture2DArray(U,0),St=O.TEXTURE_2D_ARRAY):(Ot.setTexture2D(U,0),St=O.TEXTURE_2D),pt.activeTexture(O.TEXTURE0),pt.pixelStorei(O.UNPACK_FLIP_Y_WEBGL,U.flipY),pt.pixelStorei(O.UNPACK_PREMULTIPLY_ALPHA_WEBGL,U.premultiplyAlpha),pt.pixelStorei(O.UNPACK_ALIGNMENT,U.unpackAlignment);let ln=pt.getParameter(O.UNPACK_ROW_LENGTH),ee=pt.getParameter(O.UNPACK_IMAGE_HEIGHT),ss=pt.getParameter(O.UNPACK_SKIP_PIXELS),en=pt.getParameter(O.UNPACK_SKIP_ROWS),pa=pt.getParameter(O.UNPACK_SKIP_IMAGES);pt.pixelStorei(O.UNPACK_ROW_LENGTH,de.width),pt.pixelStorei(O.UNPACK_IMAGE_HEIGHT,de.height),pt.pixelStorei(O.UNPACK_SKIP_PIXELS,Tt),pt.pixelStorei(O.UNPACK_SKIP_ROWS,Bt),pt.pixelStorei(O.UNPACK_SKIP_IMAGES,Yt);let Ni=w.isDataArrayTexture||w.isData3DTexture,rs=U.isDataArrayTexture||U.isData3DTexture;if(w.isDepthTexture){let Kt=Lt.get(w),Je=Lt.get(U),Vn=Lt.get(Kt.__renderTarget),Te=Lt.get(Je.__renderTarget);pt.bindFramebuffer(O.READ_FRAMEBUFFER,Vn.__webglFramebuffer),pt.bindFramebuffer(O.DRAW_FRAMEBUFFER,Te.__webglFramebuffer);for(let We=0;We<vt;We++)Ni&&(O.framebufferTextureLayer(O.READ_FRAMEBUFFER,O.COLOR_ATTACHMENT0,Lt.get(w).__webglTexture,H,Yt+We),O.framebufferTextureLayer(O.DRAW_FRAMEBUFFER,O.COLOR_ATTACHMENT0,Lt.get(U).__webglTexture,ft,Pe+We)),O.blitFramebuffer(Tt,Bt,Tt+bt,Bt+ut,Mt,$t,Mt+bt,$t+ut,O.DEPTH_BUFFER_BIT,O.NEAREST);pt.bindFramebuffer(O.READ_FRAMEBUFFER,null),pt.bindFramebuffer(O.DRAW_FRAMEBUFFER,null)}else if(H!==0||w.isRenderTargetTexture||Lt.has(w)){let Kt=Lt.get(w),Je=Lt.get(U);pt.bindFramebuffer(O.READ_FRAMEBUFFER,I),pt.bindFramebuffer(O.DRAW_FRAMEBUFFER,W);for(let Vn=0;Vn<vt;Vn++)Ni?O.framebufferTextureLayer(O.READ_FRAMEBUFFER,O.COLOR_ATTACHMENT0,Kt.__webglTexture,H,Yt+Vn):O.framebufferTexture2D(O.READ_FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_2D,Kt.__webglTexture,H),rs?O.framebufferTextureLayer(O.DRAW_FRAMEBUFFER,O.COLOR_ATTACHMENT0,Je.__webglTexture,ft,Pe+Vn):O.framebufferTexture2D(O.DRAW_FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_2D,Je.__webglTexture,ft),H!==0?O.blitFramebuffer(Tt,Bt,Tt+bt,Bt+ut,Mt,$t,Mt+bt,$t+ut,O.COLOR_BUFFER_BIT,O.NEAREST):rs?O.copyTexSubImage3D(St,ft,Mt,$t,Pe+Vn,Tt,Bt,bt,ut):O.copyTexSubImage2D(St,ft,Mt,$t,Tt,Bt,bt,ut);pt.bindFramebuffer(O.READ_FRAMEBUFFER,null),pt.bindFramebuffer(O.DRAW_FRAMEBUFFER,null)}else rs?w.isDataTexture||w.isData3DTexture?O.texSubImage3D(St,ft,Mt,$t,Pe,bt,ut,vt,fe,tn,de.data):U.isCompressedArrayTexture?O.compressedTexSubImage3D(St,ft,Mt,$t,Pe,bt,ut,vt,fe,de.data):O.texSubImage3D(St,ft,Mt,$t,Pe,bt,ut,vt,fe,tn,de):w.isDataTexture?O.texSubImage2D(O.TEXTURE_2D,ft,Mt,$t,bt,ut,fe,tn,de.data):w.isCompressedTexture?O.compressedTexSubImage2D(O.TEXTURE_2D,ft,Mt,$t,de.width,de.height,fe,de.data):O.texSubImage2D(O.TEXTURE_2D,ft,Mt,$t,bt,ut,fe,tn,de);pt.pixelStorei(O.UNPACK_ROW_LENGTH,ln),pt.pixelStorei(O.UNPACK_IMAGE_HEIGHT,ee),pt.pixelStorei(O.UNPACK_SKIP_PIXELS,ss),pt.pixelStorei(O.UNPACK_SKIP_ROWS,en),pt.pixelStorei(O.UNPACK_SKIP_IMAGES,pa),ft===0&&U.generateMipmaps===!0&&U.mipmapsAutoUpdate===!0&&O.generateMipmap(St),pt.unbindTexture()},this.initRenderTarget=function(w){Lt.get(w).__webglFramebuffer===void 0&&Ot.setupRenderTarget(w)},this.initTexture=function(w){w.isCubeTexture?Ot.setTextureCube(w,0):w.isData3DTexture?Ot.setTexture3D(w,0):w.isDataArrayTexture||w.isCompressedArrayTexture?Ot.setTexture2DArray(w,0):Ot.setTexture2D(w,0),pt.unbindTexture()},this.resetState=function(){X=0,B=0,Q=null,pt.reset(),at.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return Bn}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(t){this._outputColorSpace=t;let e=this.getContext();e.drawingBufferColorSpace=Jt._getDrawingBufferColorSpace(t),e.unpackColorSpace=Jt._getUnpackColorSpace()}};function Mf(n,t=!1){let e=n[0].index!==null,i=new Set(Object.keys(n[0].attributes)),s=new Set(Object.keys(n[0].morphAttributes)),r={},o={},a=n[0].morphTargetsRelative,l=new ce;l.morphTargetsRelative=a;let c=0;for(let u=0;u<n.length;++u){let f=n[u],d=0,h=0;if(e!==(f.index!==null))return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". All geometries must have compatible attributes; make sure index attribute exists among all geometries, or in none of them."),null;for(let m in f.attributes){if(!i.has(m))return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+'. All geometries must have compatible attributes; make sure "'+m+'" attribute exists among all geometries, or in none of them.'),null;r[m]===void 0&&(r[m]=[]),r[m].push(f.attributes[m]),d++}if(d!==i.size)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". Make sure all geometries have the same number of attributes."),null;if(a!==f.morphTargetsRelative)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". .morphTargetsRelative must be consistent throughout all geometries."),null;for(let m in f.morphAttributes){if(!s.has(m))return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+".  .morphAttributes must be consistent throughout all geometries."),null;if(f.morphAttributes[m].length!==n[0].morphAttributes[m].length)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+'. All geometries must have the same number of morph targets for the "'+m+'" morph attribute.'),null;o[m]===void 0&&(o[m]=[]),o[m].push(f.morphAttributes[m]),h++}if(h!==s.size)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". Make sure all geometries have the same number of morph attributes."),null;if(t){let m;if(e)m=f.index.count;else if(f.attributes.position!==void 0)m=f.attributes.position.count;else return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". The geometry must have either an index or a position attribute"),null;l.addGroup(c,m,u),c+=m}}if(e){let u=0,f=[];for(let d=0;d<n.length;++d){let h=n[d].index;for(let m=0;m<h.count;++m)f.push(h.getX(m)+u);u+=n[d].attributes.position.count}l.setIndex(f)}for(let u in r){let f=Tg(r[u]);if(!f)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed while trying to merge the "+u+" attribute."),null;l.setAttribute(u,f)}for(let u in o){let f=o[u][0].length;if(f!==0){l.morphAttributes=l.morphAttributes||{},l.morphAttributes[u]=[];for(let d=0;d<f;++d){let h=[];for(let y=0;y<o[u].length;++y)h.push(o[u][y][d]);let m=Tg(h);if(!m)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed while trying to merge the "+u+" morphAttribute."),null;l.morphAttributes[u].push(m)}}}return l}function Tg(n){let t,e,i,s=-1,r=0;for(let c=0;c<n.length;++c){let u=n[c];if(t===void 0&&(t=u.array.constructor),t!==u.array.constructor)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.array must be of consistent array types across matching attributes."),null;if(e===void 0&&(e=u.itemSize),e!==u.itemSize)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.itemSize must be consistent across matching attributes."),null;if(i===void 0&&(i=u.normalized),i!==u.normalized)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.normalized must be consistent across matching attributes."),null;if(s===-1&&(s=u.gpuType),s!==u.gpuType)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.gpuType must be consistent across matching attributes."),null;r+=u.count*e}let o=new t(r),a=new Oe(o,e,i),l=0;for(let c=0;c<n.length;++c){let u=n[c];if(u.isInterleavedBufferAttribute){let f=l/e;for(let d=0,h=u.count;d<h;d++)for(let m=0;m<e;m++){let y=u.getComponent(d,m);a.setComponent(d+f,m,y)}}else o.set(u.array,l);l+=u.count*e}return s!==void 0&&(a.gpuType=s),a}var aa=.016,Ag=.009,Ps=.013,la=.07,Eg=12,Sf=.3,OS=new N(0,1,0);function Cg({seat:n,wheel:t,half:e,knee:i,sole:s}){let r=[],o=[],a=i[0]-.06,l=n-.07,c=-.15,u=e-.14;r.push(new mn(2*u,a-c,.05).translate(0,(a+c)/2,n-.025)),r.push(new mn(2*u,.03,Sf).translate(0,c,n+Sf/2));for(let f of[-1,1]){let d=f*(e-.06),h=f*u;r.push(wf(t-aa,aa,d,0,t)),o.push(wf(t-.05,Ag,f*(e-Ag),0,t));for(let m=0;m<Eg;m++){let y=2*Math.PI*m/Eg,g=t-aa;o.push(Ii([d,0,t],[d,g*Math.cos(y),t+g*Math.sin(y)],.003))}o.push(Ii([h,0,t],[f*e,0,t],.02)),o.push(Ii([h,c,l],[h,a,l],Ps)),o.push(Ii([h,c,l],[h,c,n+Sf],Ps)),o.push(Ii([h,0,t],[h,0,l],Ps)),o.push(Ii([h,a,l],[f*.1,s[0]+.05,s[1]],Ps)),o.push(Ii([h,a-.08,l],[h,a-.1,2*la],Ps)),r.push(wf(la-aa,aa,h,a-.1,la)),o.push(Ii([h,a-.1,la],[h,a-.1,2*la],Ps))}return o.push(Ii([-u,0,t],[u,0,t],Ps)),r.push(new mn(.3,.16,.015).translate(0,s[0]+.06,s[1]-.01)),{dark:Mf(r),bright:Mf(o)}}function wf(n,t,e,i,s){return new Vo(n,t,6,28).rotateY(Math.PI/2).translate(e,i,s)}function Ii(n,t,e){let i=new N(...n),s=new N(...t).sub(i),r=s.length();return new Ei(e,e,r,6,1).translate(0,r/2,0).applyQuaternion(new Be().setFromUnitVectors(OS,s.normalize())).translate(i.x,i.y,i.z)}var tu=9,eu=9,BS=.505,Pr=(n,t)=>n.stature*t,pe=()=>[0,0,0];function Rg(n){let t=n.limb,e=(s,r)=>({from:pe(),to:pe(),r0:r,kind:s}),i=s=>({from:pe(),to:pe(),r0:s,kind:"legs"});return{limbs:[{from:pe(),to:pe(),r0:.052,kind:"skin"},e("cloth",t*.92),e("skin",t*.72),i(.078),i(.055),e("cloth",t*.92),e("skin",t*.72),i(.078),i(.055)],balls:[{at:pe(),r:.001,kind:"legs"},{at:pe(),r:t*1.15,kind:"cloth"},{at:pe(),r:t*.86,kind:"cloth"},{at:pe(),r:t*.95,kind:"skin"},{at:pe(),r:.062,kind:"legs"},{at:pe(),r:t*1.15,kind:"cloth"},{at:pe(),r:t*.86,kind:"cloth"},{at:pe(),r:t*.95,kind:"skin"},{at:pe(),r:.062,kind:"legs"}],feet:[{at:pe()},{at:pe()}]}}var Di={shoulder:pe(),elbow:pe(),hip:pe(),knee:pe(),ankle:pe(),hand:pe(),neck:pe(),chin:pe()};function kS(n,t,e,i,s){let r=e*BS,o=e-r,a=[t[0]-n[0],t[1]-n[1],t[2]-n[2]],l=Math.max(Math.hypot(...a),1e-6),c=Math.min(Math.max(l,Math.abs(r-o)+1e-4),r+o-1e-4),u=(r*r-o*o+c*c)/(2*c),f=Math.sqrt(Math.max(r*r-u*u,0)),d=[a[0]/l,a[1]/l,a[2]/l],h=[.55*i,-.35,-.75],m=h[0]*d[0]+h[1]*d[1]+h[2]*d[2],y=[h[0]-m*d[0],h[1]-m*d[1],h[2]-m*d[2]],g=Math.hypot(...y)||1;for(let p=0;p<3;p++)s[p]=n[p]+d[p]*u+y[p]/g*f}function zS(n,t){return n.chair?[t*Pr(n,.057),.7*n.chair.knee[0],n.chair.knee[1]+.12]:[t*(n.halfBreadth+.08),.08,n.shoulder-n.arm*.97]}function Pg(n,t,e,i,s){let r=t.entry.body,o=(p,v)=>t.toStage(e,p,v),{angles:a}=e,{limbs:l,balls:c,feet:u}=n;gs(r,a,[0,0,r.shoulder+.01],Di.neck),$s(r,a,[0,.02,r.crown-Pr(r,.115)],Di.chin),o(Di.neck,l[0].from),o(Di.chin,l[0].to),o([0,0,r.hips],c[0].at),t.stand(i+.05,s);let f=(s.x-e.x)/.05,d=(s.y-e.y)/.05,h=Math.hypot(f,d),m=Math.min(.3,h*.35),y=h>.001?[f/h,d/h,0]:[0,0,0],g=(e.x*y[0]+e.y*y[1])*4.2;ps.forEach((p,v)=>{let M=p==="right"?1:-1,b=1+4*v,E=gs(r,a,[M*r.halfShoulder*.94,0,r.shoulder-r.limb],Di.shoulder),A=t.entry.props[p]!==void 0,x=A?e.bodyHand[p]:zS(r,M);if(A&&dp(r,a,p,x).forEach((B,Q)=>E[Q]+=B),kS(E,x,r.arm,M,Di.elbow),o(E,l[b].from),o(Di.elbow,l[b].to),o(Di.elbow,l[b+1].from),o(x,l[b+1].to),o(E,c[b].at),o(Di.elbow,c[b+1].at),o(x,c[b+2].at),r.chair){let B=M*Pr(r,.057),{knee:Q,sole:G}=r.chair;o([B,0,r.hips],l[b+2].from),o([B,...Q],l[b+2].to),o([B,...Q],l[b+3].from),o([B,...Q],c[b+3].at),o([B,G[0],G[1]+.08],l[b+3].to),o([B,G[0],G[1]+.08],u[v].at);return}let T=[M*Pr(r,.052),0,Pr(r,.505)],D=[M*Pr(r,.085),-.02,.08];o(T,l[b+2].from);let R=l[b+3].to;o(D,R);let P=Math.sin(g+(v===0?0:Math.PI))*m,F=Math.max(0,Math.cos(g+(v===0?0:Math.PI)))*m*.35;R[0]+=y[0]*P,R[1]+=y[1]*P,R[2]+=F;let k=l[b+2].from,I=pe();t.turn(e,[M*.1,1,0],I);let W=.035+.5*F+.2*Math.abs(P),X=[(k[0]+R[0])/2+I[0]*W,(k[1]+R[1])/2+I[1]*W,(k[2]+R[2])/2+.02];for(let B=0;B<3;B++)l[b+2].to[B]=X[B],l[b+3].from[B]=X[B],c[b+3].at[B]=X[B],u[v].at[B]=R[B]})}var Tf=[5210014,10124101,5081716,9724543,9210446,6121376,10116937,7305860];var di=64;function Af(n,t,e,i,s){for(let o=0;o<24;o++){let a=t(e+(i-e)*o/24),l=t(e+(i-e)*(o+1)/24);s((a[0]+l[0])/2,(a[1]+l[1])/2)&&n.push(new N(a[0],a[1],0),new N(l[0],l[1],0))}}function Ef(n,t,e){let i=!1;for(let s=0,r=n.length-1;s<n.length;r=s++){let[o,a]=n[s],[l,c]=n[r];a>e!=c>e&&t<(l-o)*(e-a)/(c-a)+o&&(i=!i)}return i}function Ig(){let n=[[0,.47],[.6,.475],[.8,.5],[.82,.535],[.7,.6],[.72,.65],[.88,.72],[.97,.77],[.9,.805],[.6,.825],[.3,.838],[0,.84]],t=new ko(n.map(([e,i])=>new rt(e,i)),11);return t.rotateX(Math.PI/2),t.scale(1,.068,1),t}function Dg(){let n=new bs(1,18),t=n.getAttribute("position").count,e=new Float32Array(t*3);return e.fill(.17,0,3),n.setAttribute("color",new Xt(e,3)),n}function ca(n,t,e){let s=[],r=[];for(let a=0;a<=48;a++){let l=2*Math.PI*a/48;for(let c of[n,t])s.push(c*Math.cos(l),c*Math.sin(l),0);if(a<48&&(e===0||Math.floor(a*e*2/48)%2===0)){let c=2*a;r.push(c,c+1,c+2,c+2,c+1,c+3)}}let o=new ce;return o.setAttribute("position",new Xt(s,3)),o.setIndex(r),o}function Lg(){let n=ca(.988,1,0),t=Array.from(n.getAttribute("position").array),e=Array.from(n.getIndex().array);for(let s=0;s<4;s++){let r=Math.PI/2*s+Math.PI/4,o=(l,c)=>[l*Math.cos(r+c),l*Math.sin(r+c),0],a=t.length/3;t.push(...o(.93,-.05),...o(1.06,-.05),...o(.994,.14)),e.push(a,a+1,a+2)}let i=new ce;return i.setAttribute("position",new Xt(t,3)),i.setIndex(e),i}function Ng(n){let t=new ce,e=[];for(let i=0;i<n;i++)for(let s=0;s<di-1;s++){let r=(i*di+s)*2;e.push(r,r+1,r+2,r+2,r+1,r+3)}return t.setIndex(e),t.setAttribute("position",new Oe(new Float32Array(n*di*6),3).setUsage(ns)),t.setAttribute("color",new Oe(new Float32Array(n*di*6),3).setUsage(ns)),t}function Ug(){return new $e({vertexColors:!0,transparent:!0,blending:ts,depthWrite:!1,side:on})}function Fg(){return new Cn({vertexShader:`
      varying vec3 shade;
      void main() {
        mat3 turn = mat3(instanceMatrix);
        vec3 sizes = vec3(dot(turn[0], turn[0]), dot(turn[1], turn[1]), dot(turn[2], turn[2])) + 1e-9;
        vec3 n = normalize(turn * (normal / sizes));
        vec3 sky = mix(vec3(0.07, 0.05, 0.03), vec3(0.47, 0.52, 0.58), 0.5 + 0.5 * n.z);
        vec3 front = vec3(0.54, 0.48, 0.40) * max(0.0, dot(n, vec3(-0.315, -0.63, 0.709)));
        shade = instanceColor.rgb * (sky + front) * 1.3;
        gl_Position = projectionMatrix * modelViewMatrix * instanceMatrix * vec4(position, 1.0);
      }`,fragmentShader:`
      varying vec3 shade;
      void main() {
        gl_FragColor = vec4(shade, 1.0);
        #include <colorspace_fragment>
      }`})}function Og(){return new Cn({transparent:!0,depthWrite:!1,blending:ts,uniforms:{scale:{value:720}},vertexShader:`
      attribute float size;
      uniform float scale;
      void main() {
        vec4 at = modelViewMatrix * vec4(position, 1.0);
        gl_Position = projectionMatrix * at;
        gl_PointSize = min(size * scale * projectionMatrix[1][1] * 0.5 / -at.z, 256.0);
        if (size <= 0.0) gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
      }`,fragmentShader:`
      void main() {
        vec2 p = gl_PointCoord - 0.5;
        float r = length(p * vec2(1.15, 1.0 + 0.25 * step(0.0, -p.y))) * 2.0;
        float glow = pow(max(0.0, 1.0 - r), 2.2);
        vec3 fire = mix(vec3(1.0, 0.36, 0.05), vec3(1.0, 0.86, 0.52), glow);
        gl_FragColor = vec4(fire * glow, glow);
      }`})}var ZS=new N(0,1,0),iu=class{constructor(t,e,i){this.doc=e;this.movers=i;let s=document.createElement("canvas").getContext("webgl2");if(!s)throw new Error("no WebGL");let r=s.getExtension("WEBGL_debug_renderer_info"),o=r?String(s.getParameter(r.UNMASKED_RENDERER_WEBGL)):"";s.getExtension("WEBGL_lose_context")?.loseContext(),this.software=/swiftshader|llvmpipe|software/i.test(o);let a=t.getContext("webgl2",{alpha:!1,antialias:!this.software,depth:!0,stencil:!1,powerPreference:"low-power"});if(!a)throw new Error("no WebGL");this.renderer=new Kc({canvas:t,context:a}),this.renderer.setClearColor(790290),this.camera.up.set(0,0,1),this.poses=i.map(()=>Ku()),this.skeletons=i.map(E=>Rg(E.entry.body)),i.forEach((E,A)=>ps.forEach(x=>{let T=E.entry.props[x];T&&this.props.push({who:A,side:x,prop:T})})),this.scene.add(new Wo(14674421,4864556,1.9));let l=new Yo(16773597,1.7);l.position.set(-4,-8,9),this.scene.add(l),this.build_place();let c=()=>Fg(),u=i.length,f=Math.max(this.props.length,1),d=E=>Math.max(this.props.reduce((A,{prop:x})=>A+E(x),0),1),h=d(E=>E.lines.length),m=d(E=>E.heads.length),y=(E,A,x=c())=>{let T=new Ao(E,x,A);return T.instanceMatrix.setUsage(ns),T.frustumCulled=!1,this.scene.add(T),T},g=new Ei(.82,1,1,7,1,!0),p=new Yi(1,8,5);this.limbs=y(g,u*tu),this.balls=y(p,u*eu),this.torsos=y(Ig(),u),this.skulls=y(new Yi(1,11,8),u),this.hair=y(new Yi(1,10,4,0,Math.PI*2,0,Math.PI*.5).rotateX(Math.PI/2).rotateX(.75),u),this.feet=y(new mn(.085,.24,.07),u*2),i.forEach((E,A)=>{if(!E.entry.body.chair)return;let{dark:x,bright:T}=Cg(E.entry.body.chair);this.chairs.push({who:A,mesh:y(x,1),colour:3752523},{who:A,mesh:y(T,1),colour:10200494})}),this.tethers=y(new Ei(1,1,1,4,1,!0),h,new $e),this.wicks=y(p,m,new $e),this.grips=y(new Yi(1,6,4),f,new $e);let v=new $e({transparent:!0,opacity:.07,side:on,depthWrite:!1});this.discs=y(new bs(1,32),f,v);let M=new $e({transparent:!0,opacity:.75,side:on,depthWrite:!1});this.rings=y(Lg(),f,M),this.pools=y(Dg(),m,new $e({transparent:!0,blending:ts,depthWrite:!1,vertexColors:!0})),this.alerts=y(ca(.62,.7,12),u,new $e({color:16739159,side:on,depthWrite:!1,transparent:!0})),this.followed=new Re(ca(.46,.5,0),new $e({color:16777215,transparent:!0,opacity:.55,depthWrite:!1})),this.scene.add(this.followed,this.ways);let b=new ce;b.setAttribute("position",new Oe(new Float32Array(m*3),3).setUsage(ns)),b.setAttribute("size",new Oe(new Float32Array(m),1).setUsage(ns)),this.flames=new Eo(b,Og()),this.flames.frustumCulled=!1,this.trails=new Re(Ng(d(E=>Xa(E).length)),Ug()),this.trails.frustumCulled=!1,this.scene.add(this.flames,this.trails),this.paint()}doc;movers;renderer;scene=new Mo;camera=new un(45,1,.05,300);poses;scratch=Ku();skeletons;limbs;balls;torsos;skulls;hair;feet;chairs=[];tethers;wicks;grips;discs;rings;pools;flames;trails;alerts;followed;ways=new ri;pins=new ri;tint=new kt;walkShown=-2;props=[];software;size={width:1,height:1,lift:0};resize(t,e,i,s){this.size={width:t,height:e,lift:s},this.renderer.setPixelRatio(i),this.renderer.setSize(t,e,!1),this.camera.aspect=t/Math.max(e,1),this.camera.updateProjectionMatrix(),this.flames.material.uniforms.scale.value=e*i}paint(){let t=new kt;this.movers.forEach((s,r)=>{let o=Tf[r%Tf.length],a=l=>l==="skin"?12168352:l==="cloth"?o:3883852;this.skeletons[r].limbs.forEach((l,c)=>this.limbs.setColorAt(r*tu+c,t.set(a(l.kind)))),this.skeletons[r].balls.forEach((l,c)=>this.balls.setColorAt(r*eu+c,t.set(a(l.kind)))),this.torsos.setColorAt(r,t.set(o)),this.skulls.setColorAt(r,t.set(12168352)),this.hair.setColorAt(r,t.set(2760988)),this.feet.setColorAt(2*r,t.set(2238253)),this.feet.setColorAt(2*r+1,t.set(2238253))});for(let s of this.chairs)s.mesh.setColorAt(0,t.set(s.colour));let e=0,i=0;this.props.forEach(({side:s,prop:r},o)=>{t.set(s==="left"?5682409:16754224);for(let a of[this.grips,this.discs,this.rings])a.setColorAt(o,t);r.lines.forEach(()=>this.tethers.setColorAt(e++,t)),r.heads.forEach(()=>this.wicks.setColorAt(i++,t))});for(let s=0;s<Math.max(i,1);s++)this.pools.setColorAt(s,t.set(16751164))}place(t){this.movers.forEach((e,i)=>e.at(t,this.poses[i]))}draw(t){let e=new Qt,i=new Be,s=new N,r=new N,o=new N,a=new Qt().makeScale(0,0,0),l=(D,R,P,F,k)=>{s.set(...P),r.set(...F).sub(s);let I=Math.max(r.length(),1e-6);i.setFromUnitVectors(ZS,o.copy(r).divideScalar(I)),s.addScaledVector(r,.5),D.setMatrixAt(R,e.compose(s,i,o.set(k,I,k)))},c=new Be,u=(D,R,P,F)=>D.setMatrixAt(R,e.compose(s.set(...P),c,o.set(F,F,F))),f=new Be,d=new N(0,0,1),h=[0,0,0],m=D=>(e.set(D[0],D[1],D[2],0,D[3],D[4],D[5],0,D[6],D[7],D[8],0,0,0,0,1),i.setFromRotationMatrix(e).premultiply(f));this.movers.forEach((D,R)=>{let P=this.poses[R],F=this.skeletons[R],k=D.entry.body,I=t.shown[R],W=t.hideBody===R;I&&Pg(F,D,P,t.beat,this.scratch),F.limbs.forEach((X,B)=>{let Q=R*tu+B;!I||W&&B===0?this.limbs.setMatrixAt(Q,a):l(this.limbs,Q,X.from,X.to,X.r0)}),F.balls.forEach((X,B)=>{let Q=R*eu+B;!I||W&&(B===0||B===1||B===5)?this.balls.setMatrixAt(Q,a):u(this.balls,Q,X.at,X.r)}),f.setFromAxisAngle(d,Math.atan2(P.sin,P.cos)+Math.PI),!I||W?(this.torsos.setMatrixAt(R,a),this.skulls.setMatrixAt(R,a),this.hair.setMatrixAt(R,a)):(D.toStage(P,gs(k,P.angles,[0,0,k.crown-k.stature],h),h),this.torsos.setMatrixAt(R,e.compose(s.set(...h),m(ms(P.angles)),o.set(k.halfShoulder,k.stature,k.stature))),D.toStage(P,$s(k,P.angles,[0,0,k.crown-k.stature*.065],h),h),m(fp(P.angles)),this.skulls.setMatrixAt(R,e.compose(s.set(...h),i,o.set(.077,.095,k.stature*.066))),this.hair.setMatrixAt(R,e.compose(s,i,o.set(.083,.101,k.stature*.0705)))),F.feet.forEach((X,B)=>{I?this.feet.setMatrixAt(2*R+B,e.compose(s.set(X.at[0]- -P.sin*-.05,X.at[1]-P.cos*.05,X.at[2]-.045),f,o.set(1,1,1))):this.feet.setMatrixAt(2*R+B,a)}),I&&t.alert[R]?this.alerts.setMatrixAt(R,e.compose(s.set(P.x,P.y,.012),c,o.set(1,1,1))):this.alerts.setMatrixAt(R,a)});for(let{who:D,mesh:R}of this.chairs){let P=this.poses[D];f.setFromAxisAngle(d,Math.atan2(P.sin,P.cos)+Math.PI),R.setMatrixAt(0,t.shown[D]?e.compose(s.set(P.x,P.y,0),f,o.set(1,1,1)):a),R.instanceMatrix.needsUpdate=!0}let y=this.poses[t.follow];this.followed.visible=y!==void 0&&t.shown[t.follow]&&this.movers.length>1,y&&this.followed.position.set(y.x,y.y,.01);let g=this.flames.geometry.getAttribute("position"),p=this.flames.geometry.getAttribute("size"),v=t.beat,M=0,b=0,E=0,A=0,x=[0,0,0],T=[0,0,0];this.props.forEach(({who:D,side:R,prop:P},F)=>{let k=t.shown[D],I=this.poses[D],W=k&&t.lit[D];if(!k){P.lines.forEach(()=>this.tethers.setMatrixAt(E++,a)),P.heads.forEach(()=>{p.setX(A,0),this.wicks.setMatrixAt(A++,a)}),this.grips.setMatrixAt(F,a);return}for(let[B,Q,G,tt]of P.lines)l(this.tethers,E++,Wa(I,R,[B,Q],x),Wa(I,R,[G,tt],T),.009);u(this.grips,F,I.hand[R],.034);let X=Xa(P).length;if(P.heads.forEach((B,Q)=>{let G=Wa(I,R,B,T);u(this.wicks,A,G,P.wick),g.setXYZ(A,G[0],G[1],G[2]+(W?P.flame*.12:0));let tt=1+.05*Math.sin(23*v+5*A)+.03*Math.sin(41*v+A);p.setX(A++,W?(P.wick+P.flame)*1.5*tt:0),W&&Q<X&&this.pools.setMatrixAt(b++,e.compose(s.set(G[0],G[1],.006),c,o.setScalar(.5+.35*G[2])))}),t.planes&&(this.movers.length<=4||D===t.follow)){i.setFromUnitVectors(d,r.set(...I.plane[R])),e.compose(s.set(...I.hand[R]),i,o.setScalar(P.length)),this.discs.setMatrixAt(M,t.hideBody===D?a:e),this.rings.setMatrixAt(M,e);let B=this.tint.set(R==="left"?5682409:16754224);this.discs.setColorAt(M,B),this.rings.setColorAt(M++,B)}}),this.discs.count=this.rings.count=M,this.pools.count=b,this.discs.instanceColor&&(this.discs.instanceColor.needsUpdate=!0),this.rings.instanceColor&&(this.rings.instanceColor.needsUpdate=!0),g.needsUpdate=!0,p.needsUpdate=!0;for(let D of[this.limbs,this.balls,this.torsos,this.skulls,this.hair,this.feet,this.tethers,this.wicks,this.grips,this.discs,this.rings,this.pools,this.alerts])D.instanceMatrix.needsUpdate=!0;for(let D of this.pins.children)D.visible=t.front===null||D.position.y>t.front;this.drawTrails(t),this.drawWays(t),this.renderer.render(this.scene,this.camera)}drawTrails(t){let e=this.trails.geometry,i=e.getAttribute("position"),s=e.getAttribute("color"),r=this.camera.position,o=[0,0,0],a=[0,0,0],l=i.array,c=s.array;if(this.trails.visible=t.trail>0,t.trail<=0)return;let u=0,f=this.props.flatMap(({who:d,side:h,prop:m})=>Xa(m).map(y=>({who:d,side:h,spot:y})));for(let{who:d,side:h,spot:m}of f){if(!t.shown[d]){l.fill(0,u,u+di*6),u+=di*6;continue}let y=t.lit[d],g=h==="left"?5682409:16754224,p=(g>>16&255)/255,v=(g>>8&255)/255,M=(g&255)/255;for(let b=0;b<di;b++,u+=6){let E=b/(di-1);this.movers[d].headAt(t.beat-E*t.trail,h,this.scratch,o,m),b===0&&this.movers[d].headAt(t.beat+t.trail/di,h,this.scratch,a,m);let A=a[0]-o[0],x=a[1]-o[1],T=a[2]-o[2],D=r.x-o[0],R=r.y-o[1],P=r.z-o[2],F=x*P-T*R,k=T*D-A*P,I=A*R-x*D,W=Math.hypot(F,k,I)||1,X=(y?.04:.026)*(1-.75*E)*(t.hideBody===d?.45:1);F*=X/W,k*=X/W,I*=X/W,l[u]=o[0]+F,l[u+1]=o[1]+k,l[u+2]=o[2]+I,l[u+3]=o[0]-F,l[u+4]=o[1]-k,l[u+5]=o[2]-I;let B=Math.pow(1-E,1.4)*(y?.95:.7),Q=y?Math.pow(1-E,12)*.55:0;for(let G of[u,u+3])c[G]=Math.min(1,p*B+Q),c[G+1]=Math.min(1,v*B+Q*.85),c[G+2]=Math.min(1,M*B+Q*.5);a[0]=o[0],a[1]=o[1],a[2]=o[2]}}i.needsUpdate=!0,s.needsUpdate=!0}drawWays(t){if(t.walk===this.walkShown)return;this.walkShown=t.walk,this.ways.clear();let e=this.doc.standings[t.walk];if(!e)return;let i=new ci({color:9148579,transparent:!0,opacity:.8}),s=new $e({color:9148579,transparent:!0,opacity:.6,depthWrite:!1});for(let[r,o,a]of e.spots){let l=new Re(ca(.24,.28,0),s);l.position.set(o,a,.008),this.ways.add(l);let c=[];for(let u=0;u<=48;u++){let f=e.walk+(e.start-e.walk)*u/48;this.movers[r].stand(f,this.scratch),c.push(new N(this.scratch.x,this.scratch.y,.01))}c[0].distanceTo(c[48])>.05&&this.ways.add(new vr(new ce().setFromPoints(c.slice(0,48)),i))}}build_place(){let t=this.doc.place,e=t.outline.map(([r,o])=>new rt(r,o));if(e.length>2){let r=new qi(e);for(let p of t.holes)r.holes.push(new qi(p.map(([v,M])=>new rt(v,M))));let o=new Re(new br(r),new $e({color:1514529}));o.position.z=-.004,this.scene.add(o);for(let p of[t.outline,...t.holes]){let v=[...p,p[0]].map(([M,b])=>new N(M,b,.003));this.scene.add(new Xi(new ce().setFromPoints(v),new ci({color:9148579})))}let a=e.map(p=>p.x),l=e.map(p=>p.y),c=[],[u,f,d,h]=[Math.min(...a),Math.max(...a),Math.min(...l),Math.max(...l)],m=Math.max(1,Math.ceil(Math.max(f-u,h-d)/40)),y=(p,v)=>Ef(t.outline,p,v)&&!t.holes.some(M=>Ef(M,p,v));for(let p=Math.ceil(u/m)*m;p<=f;p+=m)Af(c,v=>[p,v],d,h,y);for(let p=Math.ceil(d/m)*m;p<=h;p+=m)Af(c,v=>[v,p],u,f,y);this.scene.add(new vr(new ce().setFromPoints(c),new ci({color:2765370})));let g=[new N(0,d,.002),new N(0,h,.002)];this.scene.add(new Xi(new ce().setFromPoints(g),new ci({color:4608605})))}for(let r of t.audience)for(let o=1;o<r.line.length;o++){let[a,l]=r.line[o-1],[c,u]=r.line[o],f=new Re(new mn(Math.hypot(c-a,u-l),.1,.02),new $e({color:14279143}));f.position.set((a+c)/2,(l+u)/2,0),f.rotation.z=Math.atan2(u-l,c-a),this.scene.add(f)}for(let r of t.scenery){let o=new qi(r.outline.map(([c,u])=>new rt(c,u))),a=new Re(new br(o),new Ss({color:4866104}));a.position.z=r.height,this.scene.add(a);let l=[...r.outline,r.outline[0]];for(let c=1;c<l.length;c++){let[u,f]=l[c-1],[d,h]=l[c],m=new Re(new mn(Math.hypot(d-u,h-f),.01,r.height),new Ss({color:4866104}));m.position.set((u+d)/2,(f+h)/2,r.height/2),m.rotation.z=Math.atan2(h-f,d-u),this.scene.add(m)}}let i=new ci({color:9148579,transparent:!0,opacity:.7});for(let{points:r}of t.lines){let o=r.map(([a,l])=>new N(a,l,.004));o.length>1&&this.scene.add(new Xi(new ce().setFromPoints(o),i))}let s=(r,o,a,l)=>{let c=new Re(new Ei(.05,.16,l,10),new Ss({color:a}));c.rotation.x=Math.PI/2,c.position.set(r,o,l/2),this.pins.add(c)};this.scene.add(this.pins);for(let r of this.doc.crew)s(r.at[0],r.at[1],9425076,1.2);for(let[r,o]of t.extinguishers)s(r,o,13649979,.6);for(let r of t.exits)s(r.at[0],r.at[1],10475775,.25);t.fuel&&s(t.fuel[0],t.fuel[1],14205530,.6)}};var su=class{constructor(t,e,i,s){this.buffer=t;this.start=i;this.speed=s;this.hop=Math.round(.03*t.sampleRate/2),this.size=2*this.hop,this.reach=Math.round(.005*t.sampleRate),this.window=Float32Array.from({length:this.size},(r,o)=>.5-.5*Math.cos(2*Math.PI*o/this.size)),this.tail=Array.from({length:t.numberOfChannels},()=>new Float32Array(this.hop)),this.mono=e}buffer;start;speed;size;hop;reach;window;tail;frame=0;last=null;mono;next(t){let{hop:e,size:i,window:s,buffer:r,speed:o}=this,a=this.tail.map(()=>new Float32Array(t*e+e));this.tail.forEach((l,c)=>a[c].set(l));for(let l=0;l<t;l++,this.frame++){let c=this.start*r.sampleRate+(this.frame+1)*e*o,u=this.best(Math.round(c-e));for(let f=0;f<a.length;f++){let d=r.getChannelData(f),h=a[f];for(let m=0;m<i;m++){let y=u+m;y>=0&&y<d.length&&(h[l*e+m]+=s[m]*d[y])}}this.last=u}return this.tail=a.map(l=>l.slice(t*e)),a.map(l=>l.slice(0,t*e))}best(t){let{last:e,hop:i,reach:s,mono:r}=this;if(e===null)return t;let o=e+i,a=(f,d)=>{let h=0,m=1e-9;for(let y=0;y<i;y+=d){let g=r[f+y]||0;h+=g*(r[o+y]||0),m+=g*g}return h/Math.sqrt(m)},l=t,c=-1/0;for(let f=-s;f<=s;f+=6){let d=a(t+f,6);d>c&&(c=d,l=t+f)}let u=l;c=-1/0;for(let f=Math.max(u-5,t-s);f<=Math.min(u+5,t+s);f++){let d=a(f,3);d>c&&(c=d,l=f)}return l}};var JS=1.6,KS=.4,jS=1105/44100,QS=.004,tw=.04,ru=class{constructor(t,e,i){this.duration=e;this.context=new AudioContext({latencyHint:"interactive"}),this.output=this.context.createGain(),this.output.connect(this.context.destination),this.ready=this.context.decodeAudioData(t).then(s=>{this.buffer=s,this.skip=s.duration-e>.02?jS:0,this.mono=new Float32Array(s.length);for(let r=0;r<s.numberOfChannels;r++){let o=s.getChannelData(r);for(let a=0;a<o.length;a++)this.mono[a]+=o[a]}},()=>i("This browser cannot read the song."))}duration;silent=!1;context;output;buffer=null;mono=new Float32Array(0);skip=0;ready;rate=1;rest=0;on=!1;pieces=[];nodes=[];stretcher=null;timer=0;span=null;shown=0;stamp=0;get playing(){return this.on}heard(){let{context:t}=this,e=t.getOutputTimestamp?.();if(e?.contextTime&&e.performanceTime){let i=e.contextTime+(performance.now()-e.performanceTime)/1e3;if(i<=t.currentTime+.01&&i>t.currentTime-.6)return i}return t.currentTime-(t.outputLatency||t.baseLatency||0)}songAt(t){let{pieces:e}=this,i=e.length-1;for(;i>0&&e[i].at>t;)i--;let s=e[i];return s?Math.min(s.to,s.from+Math.max(0,t-s.at)*this.rate):this.rest}now(){if(!this.on)return this.rest;let t=this.songAt(this.heard()),e=performance.now(),i=this.shown+(e-this.stamp)/1e3*this.rate,s=t-i,r=QS*this.rate;return this.shown=Math.abs(s)>.03?t:Math.min(t+r,Math.max(t-r,i+.2*s)),this.stamp=e,t>=this.duration-.001&&!this.span&&(this.pause(),this.rest=this.duration),Math.max(0,this.shown)}when(t){for(let e of this.pieces)if(e.from<=t&&t<e.to){let i=e.at+(t-e.from)/this.rate;if(i>this.context.currentTime-.02)return i}return null}async play(){await this.ready,await this.context.resume(),this.buffer&&(this.rest>=this.duration-.01&&(this.rest=0),this.on=!0,this.begin(this.rest))}pause(){this.rest=this.on?Math.max(0,this.songAt(this.heard())):this.rest,this.on=!1,this.hush()}seek(t){this.rest=Math.min(Math.max(t,0),this.duration),this.on&&this.begin(this.rest)}loop(t){t?.[0]===this.span?.[0]&&t?.[1]===this.span?.[1]||(this.span=t,this.on&&this.begin(this.songAt(this.heard())))}get speed(){return this.rate}set speed(t){if(t===this.rate)return;let e=this.on?this.songAt(this.heard()):this.rest;this.rate=t,this.on&&this.begin(e)}get volume(){return this.output.gain.value}set volume(t){this.output.gain.value=t}hush(){clearInterval(this.timer);for(let{node:t}of this.nodes)t.stop();this.nodes=[],this.pieces=[],this.stretcher=null}begin(t){this.hush(),this.rest=this.shown=t,this.stamp=performance.now(),this.pieces=[{at:this.context.currentTime+tw,from:t,to:t}],this.fill(),this.timer=window.setInterval(()=>this.fill(),100)}fill(){let{context:t,pieces:e}=this;if(!(!this.buffer||!this.on)){for(;e.length>2&&e[1].at<t.currentTime-2;)e.shift();for(this.nodes=this.nodes.filter(({until:i})=>i>t.currentTime-.1);;){let i=e[e.length-1],s=i.at+(i.to-i.from)/this.rate;if(s>t.currentTime+JS)return;let r=this.span?this.span[1]:this.duration,o=i.to>=r-1e-6;if(o&&!this.span)return;let a=o&&this.span?this.span[0]:i.to;o&&(this.stretcher=null);let l=this.hand(s,a,Math.min(r,a+Math.max(.05,KS*this.rate)));if(l<=a)return;e.push({at:s,from:a,to:l})}}}hand(t,e,i){let s=this.buffer,r=this.context.createBufferSource();r.connect(this.output);let o=i;if(this.rate===1)r.buffer=s,r.start(t,e+this.skip,i-e);else{this.stretcher??=new su(s,this.mono,e+this.skip,this.rate);let{hop:a}=this.stretcher,l=Math.max(1,Math.ceil((i-e)/this.rate*s.sampleRate/a-1e-6)),c=this.stretcher.next(l),u=this.context.createBuffer(c.length,l*a,s.sampleRate);c.forEach((f,d)=>u.copyToChannel(f,d)),r.buffer=u,r.start(t),o=Math.min(this.duration,e+l*a/s.sampleRate*this.rate)}return this.nodes.push({node:r,until:t+(o-e)/this.rate}),o}};var kg={type:"change"},If={type:"start"},Vg={type:"end"},ou=new Hi,zg=new Tn,ew=Math.cos(70*Yc.DEG2RAD),Ve=new N,_n=2*Math.PI,re={NONE:-1,ROTATE:0,DOLLY:1,PAN:2,TOUCH_ROTATE:3,TOUCH_PAN:4,TOUCH_DOLLY_PAN:5,TOUCH_DOLLY_ROTATE:6},Pf=1e-6,au=class extends $o{constructor(t,e=null){super(t,e),this.state=re.NONE,this.target=new N,this.cursor=new N,this.minDistance=0,this.maxDistance=1/0,this.minZoom=0,this.maxZoom=1/0,this.minTargetRadius=0,this.maxTargetRadius=1/0,this.minPolarAngle=0,this.maxPolarAngle=Math.PI,this.minAzimuthAngle=-1/0,this.maxAzimuthAngle=1/0,this.enableDamping=!1,this.dampingFactor=.05,this.enableZoom=!0,this.zoomSpeed=1,this.enableRotate=!0,this.rotateSpeed=1,this.keyRotateSpeed=1,this.enablePan=!0,this.panSpeed=1,this.screenSpacePanning=!0,this.keyPanSpeed=7,this.zoomToCursor=!1,this.autoRotate=!1,this.autoRotateSpeed=2,this.keys={LEFT:"ArrowLeft",UP:"ArrowUp",RIGHT:"ArrowRight",BOTTOM:"ArrowDown"},this.mouseButtons={LEFT:Ki.ROTATE,MIDDLE:Ki.DOLLY,RIGHT:Ki.PAN},this.touches={ONE:ji.ROTATE,TWO:ji.DOLLY_PAN},this.target0=this.target.clone(),this.position0=this.object.position.clone(),this.zoom0=this.object.zoom,this._cursorStyle="auto",this._domElementKeyEvents=null,this._lastPosition=new N,this._lastQuaternion=new Be,this._lastTargetPosition=new N,this._quat=new Be().setFromUnitVectors(t.up,new N(0,1,0)),this._quatInverse=this._quat.clone().invert(),this._spherical=new Sr,this._sphericalDelta=new Sr,this._scale=1,this._panOffset=new N,this._rotateStart=new rt,this._rotateEnd=new rt,this._rotateDelta=new rt,this._panStart=new rt,this._panEnd=new rt,this._panDelta=new rt,this._dollyStart=new rt,this._dollyEnd=new rt,this._dollyDelta=new rt,this._dollyDirection=new N,this._mouse=new rt,this._performCursorZoom=!1,this._pointers=[],this._pointerPositions={},this._controlActive=!1,this._onPointerMove=iw.bind(this),this._onPointerDown=nw.bind(this),this._onPointerUp=sw.bind(this),this._onContextMenu=hw.bind(this),this._onMouseWheel=aw.bind(this),this._onKeyDown=lw.bind(this),this._onTouchStart=cw.bind(this),this._onTouchMove=uw.bind(this),this._onMouseDown=rw.bind(this),this._onMouseMove=ow.bind(this),this._interceptControlDown=fw.bind(this),this._interceptControlUp=dw.bind(this),this.domElement!==null&&this.connect(this.domElement),this.update()}set cursorStyle(t){this._cursorStyle=t,t==="grab"?this.domElement.style.cursor="grab":this.domElement.style.cursor="auto"}get cursorStyle(){return this._cursorStyle}connect(t){super.connect(t),this.domElement.addEventListener("pointerdown",this._onPointerDown),this.domElement.addEventListener("pointercancel",this._onPointerUp),this.domElement.addEventListener("contextmenu",this._onContextMenu),this.domElement.addEventListener("wheel",this._onMouseWheel,{passive:!1}),this.domElement.ownerDocument.addEventListener("keydown",this._interceptControlDown,{passive:!0,capture:!0}),this.domElement.style.touchAction="none"}disconnect(){this.state=re.NONE,this.domElement.removeEventListener("pointerdown",this._onPointerDown),this.domElement.ownerDocument.removeEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.removeEventListener("pointerup",this._onPointerUp),this.domElement.removeEventListener("pointercancel",this._onPointerUp),this.domElement.removeEventListener("wheel",this._onMouseWheel),this.domElement.removeEventListener("contextmenu",this._onContextMenu),this.stopListenToKeyEvents(),this.domElement.ownerDocument.removeEventListener("keydown",this._interceptControlDown,{capture:!0}),this.domElement.ownerDocument.removeEventListener("keyup",this._interceptControlUp,{capture:!0}),this._controlActive=!1,this._pointers.length=0,this._pointerPositions={},this.domElement.style.touchAction="",this.domElement.style.cursor="auto"}dispose(){this.disconnect()}getPolarAngle(){return this._spherical.phi}getAzimuthalAngle(){return this._spherical.theta}getDistance(){return this.object.position.distanceTo(this.target)}listenToKeyEvents(t){t.addEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=t}stopListenToKeyEvents(){this._domElementKeyEvents!==null&&(this._domElementKeyEvents.removeEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=null)}saveState(){this.target0.copy(this.target),this.position0.copy(this.object.position),this.zoom0=this.object.zoom}reset(){this.target.copy(this.target0),this.object.position.copy(this.position0),this.object.zoom=this.zoom0,this.object.updateProjectionMatrix(),this.dispatchEvent(kg),this.update(),this.state=re.NONE}pan(t,e){this._pan(t,e),this.update()}dollyIn(t){this._dollyIn(t),this.update()}dollyOut(t){this._dollyOut(t),this.update()}rotateLeft(t){this._rotateLeft(t),this.update()}rotateUp(t){this._rotateUp(t),this.update()}update(t=null){let e=this.object.position;Ve.copy(e).sub(this.target),Ve.applyQuaternion(this._quat),this._spherical.setFromVector3(Ve),this.autoRotate&&this.state===re.NONE&&this._rotateLeft(this._getAutoRotationAngle(t)),this.enableDamping?(this._spherical.theta+=this._sphericalDelta.theta*this.dampingFactor,this._spherical.phi+=this._sphericalDelta.phi*this.dampingFactor):(this._spherical.theta+=this._sphericalDelta.theta,this._spherical.phi+=this._sphericalDelta.phi);let i=this.minAzimuthAngle,s=this.maxAzimuthAngle;isFinite(i)&&isFinite(s)&&(i<-Math.PI?i+=_n:i>Math.PI&&(i-=_n),s<-Math.PI?s+=_n:s>Math.PI&&(s-=_n),i<=s?this._spherical.theta=Math.max(i,Math.min(s,this._spherical.theta)):this._spherical.theta=this._spherical.theta>(i+s)/2?Math.max(i,this._spherical.theta):Math.min(s,this._spherical.theta)),this._spherical.phi=Math.max(this.minPolarAngle,Math.min(this.maxPolarAngle,this._spherical.phi)),this._spherical.makeSafe(),this.enableDamping===!0?this.target.addScaledVector(this._panOffset,this.dampingFactor):this.target.add(this._panOffset),this.target.sub(this.cursor),this.target.clampLength(this.minTargetRadius,this.maxTargetRadius),this.target.add(this.cursor);let r=!1;if(this.zoomToCursor&&this._performCursorZoom||this.object.isOrthographicCamera)this._spherical.radius=this._clampDistance(this._spherical.radius);else{let o=this._spherical.radius;this._spherical.radius=this._clampDistance(this._spherical.radius*this._scale),r=o!=this._spherical.radius}if(Ve.setFromSpherical(this._spherical),Ve.applyQuaternion(this._quatInverse),e.copy(this.target).add(Ve),this.object.lookAt(this.target),this.enableDamping===!0?(this._sphericalDelta.theta*=1-this.dampingFactor,this._sphericalDelta.phi*=1-this.dampingFactor,this._panOffset.multiplyScalar(1-this.dampingFactor)):(this._sphericalDelta.set(0,0,0),this._panOffset.set(0,0,0)),this.zoomToCursor&&this._performCursorZoom){let o=null;if(this.object.isPerspectiveCamera){let a=Ve.length();o=this._clampDistance(a*this._scale);let l=a-o;this.object.position.addScaledVector(this._dollyDirection,l),this.object.updateMatrixWorld(),r=!!l}else if(this.object.isOrthographicCamera){let a=new N(this._mouse.x,this._mouse.y,0);a.unproject(this.object);let l=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),this.object.updateProjectionMatrix(),r=l!==this.object.zoom;let c=new N(this._mouse.x,this._mouse.y,0);c.unproject(this.object),this.object.position.sub(c).add(a),this.object.updateMatrixWorld(),o=Ve.length()}else console.warn("WARNING: OrbitControls.js encountered an unknown camera type - zoom to cursor disabled."),this.zoomToCursor=!1;o!==null&&(this.screenSpacePanning?this.target.set(0,0,-1).transformDirection(this.object.matrix).multiplyScalar(o).add(this.object.position):(ou.origin.copy(this.object.position),ou.direction.set(0,0,-1).transformDirection(this.object.matrix),Math.abs(this.object.up.dot(ou.direction))<ew?this.object.lookAt(this.target):(zg.setFromNormalAndCoplanarPoint(this.object.up,this.target),ou.intersectPlane(zg,this.target))))}else if(this.object.isOrthographicCamera){let o=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),o!==this.object.zoom&&(this.object.updateProjectionMatrix(),r=!0)}return this._scale=1,this._performCursorZoom=!1,r||this._lastPosition.distanceToSquared(this.object.position)>Pf||8*(1-this._lastQuaternion.dot(this.object.quaternion))>Pf||this._lastTargetPosition.distanceToSquared(this.target)>Pf?(this.dispatchEvent(kg),this._lastPosition.copy(this.object.position),this._lastQuaternion.copy(this.object.quaternion),this._lastTargetPosition.copy(this.target),!0):!1}_getAutoRotationAngle(t){return t!==null?_n/60*this.autoRotateSpeed*t:_n/60/60*this.autoRotateSpeed}_getZoomScale(t){let e=Math.abs(t*.01);return Math.pow(.95,this.zoomSpeed*e)}_rotateLeft(t){this._sphericalDelta.theta-=t}_rotateUp(t){this._sphericalDelta.phi-=t}_panLeft(t,e){Ve.setFromMatrixColumn(e,0),Ve.multiplyScalar(-t),this._panOffset.add(Ve)}_panUp(t,e){this.screenSpacePanning===!0?Ve.setFromMatrixColumn(e,1):(Ve.setFromMatrixColumn(e,0),Ve.crossVectors(this.object.up,Ve)),Ve.multiplyScalar(t),this._panOffset.add(Ve)}_pan(t,e){let i=this.domElement;if(this.object.isPerspectiveCamera){let s=this.object.position;Ve.copy(s).sub(this.target);let r=Ve.length();r*=Math.tan(this.object.fov/2*Math.PI/180),this._panLeft(2*t*r/i.clientHeight,this.object.matrix),this._panUp(2*e*r/i.clientHeight,this.object.matrix)}else this.object.isOrthographicCamera?(this._panLeft(t*(this.object.right-this.object.left)/this.object.zoom/i.clientWidth,this.object.matrix),this._panUp(e*(this.object.top-this.object.bottom)/this.object.zoom/i.clientHeight,this.object.matrix)):(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - pan disabled."),this.enablePan=!1)}_dollyOut(t){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale/=t:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_dollyIn(t){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale*=t:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_updateZoomParameters(t,e){if(!this.zoomToCursor)return;this._performCursorZoom=!0;let i=this.domElement.getBoundingClientRect(),s=t-i.left,r=e-i.top,o=i.width,a=i.height;this._mouse.x=s/o*2-1,this._mouse.y=-(r/a)*2+1,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()}_clampDistance(t){return Math.max(this.minDistance,Math.min(this.maxDistance,t))}_handleMouseDownRotate(t){this._rotateStart.set(t.clientX,t.clientY)}_handleMouseDownDolly(t){this._updateZoomParameters(t.clientX,t.clientY),this._dollyStart.set(t.clientX,t.clientY)}_handleMouseDownPan(t){this._panStart.set(t.clientX,t.clientY)}_handleMouseMoveRotate(t){this._rotateEnd.set(t.clientX,t.clientY),this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);let e=this.domElement;this._rotateLeft(_n*this._rotateDelta.x/e.clientHeight),this._rotateUp(_n*this._rotateDelta.y/e.clientHeight),this._rotateStart.copy(this._rotateEnd),this.update()}_handleMouseMoveDolly(t){this._dollyEnd.set(t.clientX,t.clientY),this._dollyDelta.subVectors(this._dollyEnd,this._dollyStart),this._dollyDelta.y>0?this._dollyOut(this._getZoomScale(this._dollyDelta.y)):this._dollyDelta.y<0&&this._dollyIn(this._getZoomScale(this._dollyDelta.y)),this._dollyStart.copy(this._dollyEnd),this.zoomToCursor&&(this._performCursorZoom=!0,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()),this.update()}_handleMouseMovePan(t){this._panEnd.set(t.clientX,t.clientY),this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd),this.update()}_handleMouseWheel(t){this._updateZoomParameters(t.clientX,t.clientY),t.deltaY<0?this._dollyIn(this._getZoomScale(t.deltaY)):t.deltaY>0&&this._dollyOut(this._getZoomScale(t.deltaY)),this.update()}_handleKeyDown(t){let e=!1;switch(t.code){case this.keys.UP:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateUp(_n*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,this.keyPanSpeed),e=!0;break;case this.keys.BOTTOM:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateUp(-_n*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,-this.keyPanSpeed),e=!0;break;case this.keys.LEFT:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateLeft(_n*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(this.keyPanSpeed,0),e=!0;break;case this.keys.RIGHT:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateLeft(-_n*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(-this.keyPanSpeed,0),e=!0;break}e&&(t.preventDefault(),this.update())}_handleTouchStartRotate(t){if(this._pointers.length===1)this._rotateStart.set(t.pageX,t.pageY);else{let e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._rotateStart.set(i,s)}}_handleTouchStartPan(t){if(this._pointers.length===1)this._panStart.set(t.pageX,t.pageY);else{let e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._panStart.set(i,s)}}_handleTouchStartDolly(t){let e=this._getSecondPointerPosition(t),i=t.pageX-e.x,s=t.pageY-e.y,r=Math.sqrt(i*i+s*s);this._dollyStart.set(0,r)}_handleTouchStartDollyPan(t){this.enableZoom&&this._handleTouchStartDolly(t),this.enablePan&&this._handleTouchStartPan(t)}_handleTouchStartDollyRotate(t){this.enableZoom&&this._handleTouchStartDolly(t),this.enableRotate&&this._handleTouchStartRotate(t)}_handleTouchMoveRotate(t){if(this._pointers.length==1)this._rotateEnd.set(t.pageX,t.pageY);else{let i=this._getSecondPointerPosition(t),s=.5*(t.pageX+i.x),r=.5*(t.pageY+i.y);this._rotateEnd.set(s,r)}this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);let e=this.domElement;this._rotateLeft(_n*this._rotateDelta.x/e.clientHeight),this._rotateUp(_n*this._rotateDelta.y/e.clientHeight),this._rotateStart.copy(this._rotateEnd)}_handleTouchMovePan(t){if(this._pointers.length===1)this._panEnd.set(t.pageX,t.pageY);else{let e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._panEnd.set(i,s)}this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd)}_handleTouchMoveDolly(t){let e=this._getSecondPointerPosition(t),i=t.pageX-e.x,s=t.pageY-e.y,r=Math.sqrt(i*i+s*s);this._dollyEnd.set(0,r),this._dollyDelta.set(0,Math.pow(this._dollyEnd.y/this._dollyStart.y,this.zoomSpeed)),this._dollyOut(this._dollyDelta.y),this._dollyStart.copy(this._dollyEnd);let o=(t.pageX+e.x)*.5,a=(t.pageY+e.y)*.5;this._updateZoomParameters(o,a)}_handleTouchMoveDollyPan(t){this.enableZoom&&this._handleTouchMoveDolly(t),this.enablePan&&this._handleTouchMovePan(t)}_handleTouchMoveDollyRotate(t){this.enableZoom&&this._handleTouchMoveDolly(t),this.enableRotate&&this._handleTouchMoveRotate(t)}_addPointer(t){this._pointers.push(t.pointerId)}_removePointer(t){delete this._pointerPositions[t.pointerId];for(let e=0;e<this._pointers.length;e++)if(this._pointers[e]==t.pointerId){this._pointers.splice(e,1);return}}_isTrackingPointer(t){for(let e=0;e<this._pointers.length;e++)if(this._pointers[e]==t.pointerId)return!0;return!1}_trackPointer(t){let e=this._pointerPositions[t.pointerId];e===void 0&&(e=new rt,this._pointerPositions[t.pointerId]=e),e.set(t.pageX,t.pageY)}_getSecondPointerPosition(t){let e=t.pointerId===this._pointers[0]?this._pointers[1]:this._pointers[0];return this._pointerPositions[e]}_customWheelEvent(t){let e=t.deltaMode,i={clientX:t.clientX,clientY:t.clientY,deltaY:t.deltaY};switch(e){case 1:i.deltaY*=16;break;case 2:i.deltaY*=100;break}return t.ctrlKey&&!this._controlActive&&(i.deltaY*=10),i}};function nw(n){this.enabled!==!1&&(this._pointers.length===0&&(this.domElement.setPointerCapture(n.pointerId),this.domElement.ownerDocument.addEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.addEventListener("pointerup",this._onPointerUp)),!this._isTrackingPointer(n)&&(this._addPointer(n),n.pointerType==="touch"?this._onTouchStart(n):this._onMouseDown(n),this._cursorStyle==="grab"&&(this.domElement.style.cursor="grabbing")))}function iw(n){this.enabled!==!1&&(n.pointerType==="touch"?this._onTouchMove(n):this._onMouseMove(n))}function sw(n){switch(this._removePointer(n),this._pointers.length){case 0:this.domElement.releasePointerCapture(n.pointerId),this.domElement.ownerDocument.removeEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.removeEventListener("pointerup",this._onPointerUp),this.dispatchEvent(Vg),this.state=re.NONE,this._cursorStyle==="grab"&&(this.domElement.style.cursor="grab");break;case 1:let t=this._pointers[0],e=this._pointerPositions[t];this._onTouchStart({pointerId:t,pageX:e.x,pageY:e.y});break}}function rw(n){let t;switch(n.button){case 0:t=this.mouseButtons.LEFT;break;case 1:t=this.mouseButtons.MIDDLE;break;case 2:t=this.mouseButtons.RIGHT;break;default:t=-1}switch(t){case Ki.DOLLY:if(this.enableZoom===!1)return;this._handleMouseDownDolly(n),this.state=re.DOLLY;break;case Ki.ROTATE:if(n.ctrlKey||n.metaKey||n.shiftKey){if(this.enablePan===!1)return;this._handleMouseDownPan(n),this.state=re.PAN}else{if(this.enableRotate===!1)return;this._handleMouseDownRotate(n),this.state=re.ROTATE}break;case Ki.PAN:if(n.ctrlKey||n.metaKey||n.shiftKey){if(this.enableRotate===!1)return;this._handleMouseDownRotate(n),this.state=re.ROTATE}else{if(this.enablePan===!1)return;this._handleMouseDownPan(n),this.state=re.PAN}break;default:this.state=re.NONE}this.state!==re.NONE&&this.dispatchEvent(If)}function ow(n){switch(this.state){case re.ROTATE:if(this.enableRotate===!1)return;this._handleMouseMoveRotate(n);break;case re.DOLLY:if(this.enableZoom===!1)return;this._handleMouseMoveDolly(n);break;case re.PAN:if(this.enablePan===!1)return;this._handleMouseMovePan(n);break}}function aw(n){this.enabled===!1||this.enableZoom===!1||this.state!==re.NONE||(n.preventDefault(),this.dispatchEvent(If),this._handleMouseWheel(this._customWheelEvent(n)),this.dispatchEvent(Vg))}function lw(n){this.enabled!==!1&&this._handleKeyDown(n)}function cw(n){switch(this._trackPointer(n),this._pointers.length){case 1:switch(this.touches.ONE){case ji.ROTATE:if(this.enableRotate===!1){this.state=re.NONE;break}this._handleTouchStartRotate(n),this.state=re.TOUCH_ROTATE;break;case ji.PAN:if(this.enablePan===!1){this.state=re.NONE;break}this._handleTouchStartPan(n),this.state=re.TOUCH_PAN;break;default:this.state=re.NONE}break;case 2:switch(this.touches.TWO){case ji.DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchStartDollyPan(n),this.state=re.TOUCH_DOLLY_PAN;break;case ji.DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchStartDollyRotate(n),this.state=re.TOUCH_DOLLY_ROTATE;break;default:this.state=re.NONE}break;default:this.state=re.NONE}this.state!==re.NONE&&this.dispatchEvent(If)}function uw(n){switch(this._trackPointer(n),this.state){case re.TOUCH_ROTATE:if(this.enableRotate===!1)return;this._handleTouchMoveRotate(n),this.update();break;case re.TOUCH_PAN:if(this.enablePan===!1)return;this._handleTouchMovePan(n),this.update();break;case re.TOUCH_DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchMoveDollyPan(n),this.update();break;case re.TOUCH_DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchMoveDollyRotate(n),this.update();break;default:this.state=re.NONE}}function hw(n){this.enabled!==!1&&n.preventDefault()}function fw(n){n.key==="Control"&&(this._controlActive=!0,this.domElement.ownerDocument.addEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function dw(n){n.key==="Control"&&(this._controlActive=!1,this.domElement.ownerDocument.removeEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}var Gg=[{name:"audience",label:"Audience",help:"from the audience"},{name:"behind",label:"Behind",help:"from behind the followed performer, to copy"},{name:"eye",label:"Own eye",help:"through the followed performer's eyes"},{name:"above",label:"Above",help:"plan from above, audience at the bottom"},{name:"free",label:"Free",help:"drag to turn"}],lu=class{constructor(t,e,i,s){this.camera=t;this.box=i;this.floor=s;this.orbit=new au(t,e),this.orbit.enabled=!1,this.orbit.enableDamping=!1,this.orbit.minDistance=.6,this.orbit.maxDistance=80,this.orbit.maxPolarAngle=Math.PI*.495}camera;box;floor;view="audience";zoom=1;look={yaw:0,pitch:0};orbit;a=new N;b=new N;choose(t){if(t==="free"&&this.view!=="free"){let{x0:e,x1:i,y0:s,y1:r}=this.box,o=(2.4+1.05*Math.max(i-e,r-s))*Math.max(1,.9/this.camera.aspect);this.orbit.target.set((e+i)/2,(s+r)/2,.9),this.camera.position.copy(this.orbit.target).add(this.a.set(.45*o,-.85*o,.45*o))}this.view=t,this.zoom=1,this.look={yaw:0,pitch:0},this.orbit.enabled=t==="free"}aim(t,e,i,s){let{camera:r}=this,o=r.aspect;this.view==="eye"?r.clearViewOffset():r.setViewOffset(s.width,s.height,0,s.lift/2,s.width,s.height);let a=1-s.lift/s.height,{x0:l,x1:c,y0:u,y1:f}=this.box,d=(l+c)/2,h=p=>{r.fov!==p&&(r.fov=p,r.updateProjectionMatrix())};r.up.set(0,0,1);let m=(p,v,M,b)=>{let E=[p,v,M];return t.toStage(e,E,E),b.set(...E)};if(this.view==="free"){h(45),this.orbit.update();return}if((i||this.view==="behind"||this.view==="eye")&&(!t||!e))return;let g=p=>Math.tan(p*Math.PI/360);if(this.view==="audience"&&i){h(32);let p=1.42/g(32)/Math.min(a,o*.95)/this.zoom;r.position.copy(this.a.set(e.x,e.y-p,1.55)),r.lookAt(this.b.set(e.x,e.y,1.12))}else if(this.view==="audience"){h(32);let p=(c-l)/2+1.5,v=1.55+.16*(f-u),M=Math.max(p/(g(32)*o),v/g(32)/a)/this.zoom;r.position.copy(this.a.set(d,u-M,1.7+M*.13)),r.lookAt(this.b.set(d,u+.25*(f-u),1.15))}else if(this.view==="behind"){h(45);let p=3.7*Math.max(1,.85/o)/this.zoom;r.position.copy(m(0,-p,1.75+.12*p,this.a)),r.lookAt(m(0,1.2,1.05,this.b))}else if(this.view==="eye"){h(86/Math.sqrt(this.zoom));let p=t.entry.body,[v,M,b]=$s(p,e.angles,[0,.09,p.crown-p.stature*.065],[0,0,0]);r.position.copy(m(v,M,b,this.a));let E=this.look.yaw,A=this.look.pitch-.1;r.lookAt(m(v+Math.sin(E)*Math.cos(A),M+Math.cos(E)*Math.cos(A),b+Math.sin(A),this.b))}else{h(26);let p=this.floor,v=(p.x1-p.x0)/2+.9,M=(p.y1-p.y0)/2+.6,b=Math.max(v/(g(26)*o),M/g(26)/a)/this.zoom,E=i?e.x:(p.x0+p.x1)/2,A=i?e.y:(p.y0+p.y1)/2;r.up.set(0,1,0),r.position.set(E,A,i?Math.min(b,2.1/g(26)/Math.min(a,o)/this.zoom)+1:b+1),r.lookAt(E,A,0)}}};var Df=class{clock=new qs(1);stage=null;eye=null;doc=null;counts=null;movers=[];loaded=!1;dirty=!0;constructor(){Nn(()=>{let e=Wt.value?.duration;e&&!this.loaded&&this.clock.duration!==e&&(this.clock=new qs(e),this.clock.seek(bn.peek()))}),zd(e=>{this.clock.seek(e),bn.value=this.clock.now(),this.dirty=!0});let t=()=>{this.frame(),requestAnimationFrame(t)};requestAnimationFrame(t)}async toggle(){this.clock.playing?this.clock.pause():(await this.load(),await this.clock.play()),Xr.value=this.clock.playing,this.dirty=!0}async load(){if(this.loaded)return;this.loaded=!0;let t=Wt.value?.duration??1,e=this.clock.now();try{this.clock=new ru(await pd("track.mp3"),t,i=>hs(i,!0))}catch(i){hs(`${i instanceof Error?i.message:i} The show plays without sound.`,!0),this.clock=new qs(t)}this.clock.seek(e)}show(t,e){this.doc=e,this.counts=new cs(e.tempo.times,e.tempo.first,e.tempo.bars,e.tempo.metre);let i=up(e);this.movers=e.cast.map((r,o)=>new Ha(r,i[o])),this.stage=new iu(t,e,this.movers);let s=mw(e);this.eye=new lu(this.stage.camera,t,s,s),this.eye.orbit.addEventListener("change",()=>this.dirty=!0),this.resize(t)}resize(t){let e=t.parentElement.getBoundingClientRect();this.stage?.resize(Math.max(1,e.width),Math.max(1,e.height),Math.min(window.devicePixelRatio||1,2),0),this.dirty=!0}look(t){this.eye?.choose(t),this.dirty=!0}leave(){this.stage?.renderer.dispose(),this.stage=this.eye=this.doc=null}frame(){let t=this.clock.playing;if(t&&(bn.value=this.clock.now()),Xr.value!==t&&(Xr.value=t),t&&pw(),!this.stage||!this.doc||!this.counts||!this.eye||!(t||this.dirty))return;this.dirty=!1;let e=this.clock.now(),i=this.counts.beatAt(e),s={beat:i,shown:this.doc.cast.map(()=>!0),lit:this.doc.cast.map(r=>r.lit.some(([o,a])=>e>=o&&e<a)),alert:this.doc.cast.map(()=>!1),follow:0,hideBody:-1,trail:1,planes:!0,front:null,walk:-1};this.stage.place(i),this.eye.aim(this.movers[0],this.stage.poses[0],this.doc.cast.length===1,this.stage.size),this.stage.camera.updateMatrixWorld(),this.stage.draw(s)}},Hg=null;function pw(){let n=document.querySelector(".head")?.closest(".eight")??null;n&&n!==Hg&&n.scrollIntoView({block:"nearest"}),Hg=n}function mw(n){let t=n.place.outline.map(([i])=>i),e=n.place.outline.map(([,i])=>i);for(let i of n.standings)for(let[s,r]of i.spots)t.push(s-1,s+1),e.push(r-1,r+1);return t.length?{x0:Math.min(...t),x1:Math.max(...t),y0:Math.min(...e),y1:Math.max(...e)}:{x0:-2,x1:2,y0:-1,y1:2}}var vn=new Df;function Xg(){let n=ge(null),[t,e]=It(Wt.value?"The dance is being drawn \u2026":"There is nothing to dance yet."),[i,s]=It(0),[r,o]=It("audience");return xe(()=>{let a=!0,l=Nn(()=>{Wt.value?.revision!==void 0&&c()});async function c(){try{let f=await me("dance?flown=0");if(!a)return;s(d=>d+1),setTimeout(()=>{if(!(!a||!n.current)){vn.leave();try{vn.show(n.current,f),vn.look(r),e("")}catch{e("This browser cannot draw in three dimensions; the stage from above shows where everybody stands.")}}})}catch(f){a&&!(f instanceof Ke&&f.status===409)?e(f instanceof Error?f.message:String(f)):a&&!Wt.value&&e("There is nothing to dance yet.")}}let u=new ResizeObserver(()=>n.current&&vn.resize(n.current));return n.current&&u.observe(n.current.parentElement),()=>{a=!1,l(),u.disconnect(),vn.leave()}},[]),_(ne,{children:[_("div",{class:"dance",children:[_("canvas",{ref:n,"aria-label":"The performers in motion, as drawn"},i),t&&_("p",{class:"quiet",children:t})]}),_("p",{class:"row",role:"group","aria-label":"Seen from",children:Gg.map(a=>_("button",{type:"button","aria-pressed":r===a.name,title:a.help,onClick:()=>{o(a.name),vn.look(a.name)},children:a.label},a.name))}),_("p",{class:"quiet",children:"Danced as drawn. \u201Csequencer rehearse\u201D writes the page to rehearse with, as flown."})]})}function qg(){let n=Ce.value,t=Wt.value;if(!n||!t)return null;let e=bn.value,i=n.beatAt(e),{bar:s,beat:r}=n.position(Math.max(i,n.first)+1e-6),o=a=>vn.clock.seek(Math.max(0,n.secondsAt(n.barStart(s+a))));return _("footer",{class:"transport","aria-label":"The song",children:[_("button",{type:"button",title:"A bar back",onClick:()=>{o(-1),bn.value=vn.clock.now()},children:"\u2039 bar"}),_("button",{type:"button",class:"main",onClick:()=>{vn.toggle()},title:"Play or stop (Space)",children:Xr.value?"Stop":"Play"}),_("button",{type:"button",title:"A bar on",onClick:()=>{o(1),bn.value=vn.clock.now()},children:"bar \u203A"}),_("p",{class:"where",children:[_("b",{children:s})," . ",Math.floor(r)]}),_("input",{type:"range",min:0,max:t.duration,step:.1,value:e,"aria-label":"Where the song is","aria-valuetext":`bar ${s}, count ${Math.floor(r)}`,onInput:a=>{vn.clock.seek(Number(a.currentTarget.value)),bn.value=vn.clock.now()}}),_("p",{class:"time",children:[Wg(e)," of ",Wg(t.duration)]})]})}var Wg=n=>`${Math.floor(n/60)}:${String(Math.floor(n%60)).padStart(2,"0")}`;var gw={stop:"Stop",warn:"Warn",note:"Note"};function Yg(){let n=Hn.value;if(!n)return _("p",{class:"quiet",children:"The checks have not answered yet."});let t=n.revision!==wt.value?.revision;return _("div",{class:t?"findings older":"findings",children:[t&&_("p",{class:"quiet",children:"These are about the show before the last change; it is being looked at again."}),n.open.length>0&&_("p",{class:"quiet",children:["Not looked at yet: ",n.open.join(", "),"."]}),n.drawn.length>0&&_("p",{class:"quiet",children:["So far as drawn, not as flown: ",n.drawn.join(", "),"."]}),n.complete&&!n.entries.length&&_("p",{children:"Nothing stands against it."}),_("ol",{children:n.entries.map((e,i)=>{let s=e.of.map(r=>n.findings[r]).filter(Boolean);return _("li",{id:`entry-${i}`,class:`entry ${e.severity} ${qr.value===i?"pointed":""}`,children:[_("button",{type:"button",class:"told",onClick:()=>_w(s,e.start,i),children:[_("b",{children:gw[e.severity]})," ",e.position&&_("span",{class:"when",children:e.position})," ",e.message]}),_(vw,{found:s,remedies:e.remedies,old:t})]},`${i} ${e.message}`)})}),n.complete&&n.unseen.length>0&&_("details",{children:[_("summary",{children:"What was not looked at"}),_("ul",{children:n.unseen.map(e=>_("li",{children:e},e))})]}),n.cautions.length>0&&_("details",{children:[_("summary",{children:"Cautions"}),_("ul",{children:n.cautions.map(e=>_("li",{children:e},e))})]})]})}function _w(n,t,e){qr.value=e;let i=Ce.value;t===null||!i||(Ia(Math.max(0,t)),Yr({beat:Math.floor(i.beatAt(t)+1e-6),who:n[0]?.who.length?n[0].who:[]}),setTimeout(()=>document.querySelector(".count.on")?.scrollIntoView({block:"center"})))}function vw({found:n,remedies:t,old:e}){let i=n.flatMap(c=>c.mends),s=i.filter((c,u)=>i.findIndex(f=>f.words===c.words&&JSON.stringify(f.lines)===JSON.stringify(c.lines))===u),r=new Set(s.map(c=>c.words)),o=t.filter(c=>!r.has(c)),[a,l]=It(null);return _(ne,{children:[s.length>0&&_("p",{class:"mends",children:s.map(c=>_("button",{type:"button","aria-pressed":a===c,onClick:()=>l(a===c?null:c),children:c.words},c.words))}),a&&_("div",{class:"preview",children:[_("p",{children:"This changes in the file:"}),_("pre",{children:a.lines.map(c=>[...c.out.map(u=>`\u2212 ${u.trim()}`),...c.in.map(u=>`+ ${u.trim()}`)].join(`
`)).join(`
\u2026
`)}),_("button",{type:"button",class:"main",disabled:e,onClick:()=>{l(null),ie(a.operation,`Mended: ${a.words}.`)},children:"Do it"})]}),o.length>0&&_("ul",{class:"remedies",children:o.map(c=>_("li",{children:c},c))})]})}var zn=null;function yn(n){if(n?.$ref)return{...yn(zn.$defs[n.$ref.split("/").pop()]),...n,$ref:void 0};let t=n?.anyOf?.filter(e=>e.type!=="null");if(t?.length===1)return{...yn(t[0]),description:n.description??yn(t[0]).description,default:n.default};if(t?.length>1){let e=t.map(yn).find(i=>i.properties);if(e)return{...e,description:n.description??e.description,orWord:!0}}return n??{}}var $g={audience:"audience edge",ceilings:"ceiling",scenery:"piece of scenery",exits:"exit",extinguishers:"extinguisher"},yw=[["venue","Place"],["fire","Fire"],["limits","Limits"],["wishes","Wishes for drafts"],["rules","Rules"],["weather","Weather"],["stop_call","Stop call"],["emergency","Emergency"],["drift","Errors to expect"]];function Kg(){let[n,t]=It(zn!==null);xe(()=>{n||me("schema").then(s=>{zn=s,t(!0)})},[]);let e=wt.value?.values;if(!n||!e)return _("p",{class:"quiet",children:e===null?"The file cannot be read: mend it under Text.":"The forms are being made \u2026"});let i={properties:Object.fromEntries(["title","version","date","night","begins"].map(s=>[s,zn.properties[s]]))};return _("div",{class:"forms",children:[_("details",{open:!0,children:[_("summary",{children:"Show"}),_(Dr,{of:i,values:e,change:s=>({do:"change-titles",values:s}),path:"show"})]}),_("details",{children:[_("summary",{children:"Song"}),_(bw,{values:e})]}),_("details",{children:[_("summary",{children:"Cast"}),_(Zg,{group:"cast",kind:"Performer",values:e})]}),_("details",{children:[_("summary",{children:"Crew"}),_(Zg,{group:"crew",kind:"CrewMember",values:e})]}),yw.map(([s,r])=>_("details",{children:[_("summary",{children:r}),_("p",{class:"quiet",children:zn.properties[s]?.description}),_(Dr,{of:yn(zn.properties[s]),values:e[s]??{},change:o=>({do:"change-heading",heading:s,values:o}),path:s,without:[...Object.keys($g),"lit"]}),s==="venue"&&Object.entries($g).map(([o,a])=>_(Jg,{into:o,word:a,values:e.venue?.[o]??[]},o)),s==="fire"&&e.fire&&_(Jg,{into:"lit",word:"time in which somebody is lit",values:e.fire.lit??[]})]},s))]})}function Zg({group:n,kind:t,values:e}){let i=e[n]??[],[s,r]=It(""),o=()=>{let l=i[i.length-1]??{},c=u=>{let f=Object.values(Wt.value?.formations[u]?.spots??{}),d=f.length?Math.max(...f.map(m=>m[0])):-2,h=f.length?f[f.length-1][1]:3;return{at:[Math.round((d+2)*20)/20,h]}};if(n==="cast"){let u=Object.entries(e.formations??{}).filter(([,f])=>f?.spots).map(([f])=>f);ie({do:"add-performer",performer:{name:s,stature:cu(l.stature??"1.7 m"),prop:ua(l.prop??"poi")},spots:Object.fromEntries(u.map(f=>[f,c(f)]))},`${s} is in the cast.`)}else ie({do:"add-crew",member:{name:s,post:[-6,2],duty:"spotter"}},`${s} is in the crew.`);r("")},a=zn.$defs[t];return _(ne,{children:[i.map(l=>_("details",{class:"inner",children:[_("summary",{children:l.name}),_(xw,{group:n,name:l.name}),_(Dr,{of:a,values:l,without:["name"],change:c=>({do:"change-person",group:n,name:l.name,values:c}),path:`${n} ${l.name}`}),_("p",{class:"row",children:_("button",{type:"button",onClick:()=>{ie({do:"remove-person",group:n,name:l.name},`${l.name} is taken out.`)},children:["Take ",l.name," out"]})})]},l.name)),_("form",{class:"row",onSubmit:l=>{l.preventDefault(),s.trim()&&o()},children:[_("label",{children:["A new ",n==="cast"?"performer":"member of the crew"," ",_("input",{type:"text",value:s,placeholder:"name",onInput:l=>r(l.currentTarget.value)})]}),_("button",{type:"submit",disabled:!s.trim(),children:"Add"})]})]})}function xw({group:n,name:t}){let[e,i]=It(t);return _("form",{class:"row",onSubmit:s=>{s.preventDefault(),ie({do:"rename-person",group:n,name:t,new:e},`Now called ${e}.`)},children:[_("label",{children:["Name ",_("input",{type:"text",value:e,onInput:s=>i(s.currentTarget.value)})]}),_("button",{type:"submit",disabled:!e.trim()||e===t,children:"Rename everywhere"})]})}function bw({values:n}){let t=yn(zn.properties.track),e=yn(t.properties?.corrections??{}),i=n.track?.corrections?.sections??[],[s,r]=It(""),[o,a]=It("");return _(ne,{children:[_(Wu,{}),_("p",{class:"quiet",children:[n.track?.file,": put right here what was heard wrongly."]}),_(Dr,{of:e,values:n.track?.corrections??{},without:["sections"],change:l=>({do:"correct-count",values:l}),path:"count"}),i.map((l,c)=>_("p",{class:"row",children:[_("span",{children:["From ",l.from,": ",l.name]}),_("button",{type:"button",class:"small",onClick:()=>{ie({do:"delete-section",number:c},"The section goes on from the one before.")},children:"Take out"})]},`${l.from}${l.name}`)),_("form",{class:"row",onSubmit:l=>{l.preventDefault(),ie({do:"put-section",start:o,name:s,before:Mw(i,o)},`${s} from ${o}.`),r(""),a("")},children:[_("label",{children:["A section ",_("input",{type:"text",value:s,placeholder:"verse",onInput:l=>r(l.currentTarget.value)})]}),_("label",{children:["from bar.beat ",_("input",{type:"text",value:o,placeholder:"9.1",onInput:l=>a(l.currentTarget.value)})]}),_("button",{type:"submit",disabled:!s||!o,children:"Add"})]})]})}function Mw(n,t){let e=s=>Number.parseFloat(s),i=n.findIndex(s=>e(String(s.from))>e(t));return i<0?null:i}function Jg({into:n,word:t,values:e}){let i=yn(yn(n==="lit"?zn.properties.fire:zn.properties.venue).properties[n].items??Sw(n).items),s=Array.isArray(e)?e:[],r={audience:{name:`edge ${s.length+1}`,line:[[-6,-3],[6,-3]]},ceilings:null,scenery:null,exits:{name:`exit ${s.length+1}`,at:[-6,-4],width:"1.2 m"},extinguishers:{at:[-5,2],rating:"2-A:10-B:C",kind:"foam"},lit:{who:"all",from:"1.1",until:"2.1"}};return _(ne,{children:[s.map((o,a)=>_("details",{class:"inner",children:[_("summary",{children:[o.name??`${t} ${a+1}`,n==="lit"?`: ${[o.who].flat().join(", ")}, ${o.from} to ${o.until}`:""]}),_(Dr,{of:i,values:o,change:l=>({do:"change-item",into:n,number:a,values:l}),path:`${n} ${a}`}),_("p",{class:"row",children:_("button",{type:"button",onClick:()=>{ie({do:"delete-item",into:n,number:a},"Taken out.")},children:"Take it out"})})]},a)),r[n]&&_("p",{class:"row",children:_("button",{type:"button",onClick:()=>{ie({do:"put-item",into:n,item:r[n]},"Added.")},children:["Add ",/^[aeiou]/.test(t)?"an":"a"," ",t]})})]})}var Sw=n=>yn(yn(n==="lit"?zn.properties.fire:zn.properties.venue).properties[n]);function Dr({of:n,values:t,change:e,put:i,path:s,without:r=[]}){let o=Object.entries(n?.properties??{}).filter(([y])=>!r.includes(y)),a=t&&typeof t=="object"?t:{},l=o.filter(([y])=>a[y]!==void 0),c=o.filter(([y])=>a[y]===void 0),[u,f]=It([]),d=[...l,...c.filter(([y])=>u.includes(y))],h=c.filter(([y])=>!u.includes(y)),m=i??((y,g)=>ie(e({[y]:g}),`${Ir(y)} ${g===null?"left out":"changed"}.`));return _("div",{class:"fields",children:[d.map(([y,g])=>_(ww,{name:y,of:yn(g),value:a[y],set:p=>m(y,p),id:`${s} ${y}`.replaceAll(/\W+/g,"-")},y)),h.length>0&&_("label",{class:"more",children:["Say more ",_("select",{value:"",onChange:y=>{f([...u,y.currentTarget.value]),y.currentTarget.value=""},children:[_("option",{value:""}),h.map(([y])=>_("option",{value:y,children:Ir(y)},y))]})]})]})}var Ir=n=>n.replaceAll("_"," ");function ww({name:n,of:t,value:e,set:i,id:s}){let r=e===void 0?"":typeof e=="string"||typeof e=="number"?String(e):JSON.stringify(ua(e)),[o,a]=It(r);if(xe(()=>a(r),[r]),t.properties&&e&&typeof e=="object"&&!Array.isArray(e))return _("fieldset",{children:[_("legend",{children:Ir(n)}),_(Tw,{of:t,value:e,set:i,path:s})]});let l=t.enum??(t.type==="boolean"?["true","false"]:null),c=`${s}-why`;return _("div",{class:"field",children:[_("label",{for:s,children:Ir(n)}),l?_("select",{id:s,"aria-describedby":c,value:r||String(t.default??""),onChange:u=>{i(cu(u.currentTarget.value))},children:[!r&&_("option",{value:""}),l.map(u=>_("option",{value:String(u),children:String(u)},String(u)))]}):_("input",{id:s,type:"text","aria-describedby":c,list:n==="who"?"cast-names":void 0,value:o,placeholder:t.examples?.[0]??(t.default!==void 0&&t.default!==null?String(t.default):""),onInput:u=>a(u.currentTarget.value),onChange:async()=>{o!==r&&!await i(o.trim()?Aw(o):null)&&a(r)}}),e!==void 0&&_("button",{type:"button",class:"small",title:`Leave ${Ir(n)} out`,"aria-label":`Leave ${Ir(n)} out`,onClick:()=>{i(null)},children:"\xD7"}),_("small",{id:c,children:t.description})]})}function Tw({of:n,value:t,set:e,path:i}){return _(Dr,{of:n,values:t,path:i,put:(r,o)=>{let{[r]:a,...l}=ua(t);return e(o===null?l:{...l,[r]:o})}})}function Aw(n){if(/^[[{]/.test(n.trim()))try{return JSON.parse(n)}catch{return n}return cu(n.trim())}function cu(n){return typeof n!="string"?n:n==="true"||n==="false"?n==="true":/^-?\d+(\.\d+)?$/.test(n)&&String(Number(n))===n?Number(n):n}function ua(n){return Array.isArray(n)?n.map(ua):n&&typeof n=="object"?Object.fromEntries(Object.entries(n).map(([t,e])=>[t,ua(e)])):cu(n)}var jg=()=>_("datalist",{id:"cast-names",children:["all",...Me.value].map(n=>_("option",{value:n},n))});var uu=48;function Lf(){let n=Wt.value,t=Ce.value;if(!n||!t)return[];let e=n.blocks.map(s=>s.start),i=n.blocks.map(s=>s.end);return Od(t,n.sections,Math.min(0,...e),Math.max(t.beatAt(n.duration),...i))}function Qg(){let n=Lf(),t=Math.max(1,...n.map(e=>e.beats));return _("div",{class:Ra.value?"sheet":"sheet older",role:"group","aria-label":"The song in eights; arrow keys walk over the counts",onKeyDown:e=>kw(e,n),children:n.map((e,i)=>_(Ew,{row:e,wide:t,first:i===0},e.start))})}function Ew({row:n,wide:t,first:e}){let i=Uu(n,Me.value,Pa.value),s=Ce.value,r=Qe.value;return _("div",{class:"part-row",children:[n.heads&&n.section&&_("h2",{class:"part",children:[n.section.name," ",_("small",{children:["bar ",n.bar,Cw(n.section)]})]}),_("div",{class:"eight",children:[_("button",{class:"bar",type:"button",tabIndex:-1,title:"Go there in the song",onClick:()=>Ia(s.secondsAt(n.start)),children:n.bar}),_("div",{class:"lines",style:{width:`${100*n.beats/t}%`},children:[_("div",{class:"counts","aria-hidden":"true",children:t0(n).map(o=>_("i",{children:o+1},o))}),i.map(o=>_(Rw,{line:o,row:n,named:i.length>1||o.who.length<Me.value.length,entry:e&&r===null},o.who.join())),_(Lw,{row:n}),_(Nw,{row:n}),_(Fw,{row:n})]}),_(Ow,{row:n})]})]})}function Cw(n){let t=Wt.value.sections.map(i=>i.energy).sort((i,s)=>i-s),e=t.indexOf(n.energy)/Math.max(1,t.length-1);return t.length<3?"":e<=.25?", calm":e>=.75?", full":""}var t0=n=>[...Array(Math.max(1,Math.round(n.beats))).keys()],hu=(n,t)=>`${100*(Math.min(Math.max(t,n.start),n.start+n.beats)-n.start)/n.beats}%`,Nf=(n,t,e)=>({left:hu(n,t),width:`calc(${hu(n,e)} - ${hu(n,t)})`});function Rw({line:n,row:t,named:e,entry:i}){return _("div",{class:"line",children:[e&&_("span",{class:"who",children:Us(n.who,Me.value)}),_("div",{class:"bars",children:[t0(t).map(s=>_(Pw,{beat:t.start+s,line:n,row:t,entry:i&&s===0},s)),Bd(n.blocks).map(s=>_("span",{class:"gap","aria-hidden":"true",style:Nf(t,s.start,s.end)},s.start)),n.blocks.map(s=>_(Dw,{block:s,line:n,row:t},`${s.kind} ${s.start}`))]})]})}function Pw({beat:n,line:t,row:e,entry:i}){let s=ge(null),r=Qe.value,o=r!==null&&r.beat===n&&r.who.some(l=>t.who.includes(l));xe(()=>{o&&zs.value&&s.current?.focus()},[o]);let a=Fu(t.blocks,n);return _("button",{ref:s,type:"button",class:o?"count on":"count",tabIndex:o||i?0:-1,"aria-current":o?"location":void 0,"aria-label":`Bar ${e.bar}, count ${Math.round(n-e.start)+1}, ${Us(t.who,Me.value)}: ${a?Iw(a):"nothing"}`,onClick:()=>e0({beat:n,who:t.who})})}function e0(n){zs.value=!1,Yr(n),Un.value=!0}function Iw(n){return n.kind==="link"?"a link":n.phrase?`${n.title}, of the phrase ${n.phrase}`:n.title}function Dw({block:n,line:t,row:e}){let i=n.start>=e.start-1e-6,s=n.end<=e.start+e.beats+1e-6,r=Qe.value,o=r!==null&&n.path!==null&&r.who.some(c=>t.who.includes(c))&&r.beat>=n.start-1e-6&&r.beat<n.end-1e-6,a=["block",n.path===null?"between":"written",n.kind,i?"begins":"",s?"ends":"",o?"chosen":""].join(" "),l=n.kind!=="link"&&(n.path!==null||n.end-n.start>1.5);return _("div",{class:a,"aria-hidden":"true",style:Nf(e,n.start,n.end),title:[n.title,...n.words].join(`
`),onClick:c=>{let u=c.currentTarget.parentElement.getBoundingClientRect(),f=e.start+Math.floor((c.clientX-u.left)/u.width*e.beats);e0({beat:f,who:t.who})},children:[l&&_("span",{children:i?n.title:`\u2026 ${n.title}`}),i&&l&&n.phrase&&_("small",{children:n.phrase})]})}function Lw({row:n}){let t=new Map;for(let e of Wt.value?.walks??[]){if(e.end<=n.start||e.start>=n.start+n.beats||e.length<.05)continue;let i=`${e.start} ${e.end}`,s=t.get(i);s?s.who.push(e.who):t.set(i,{start:e.start,end:e.end,who:[e.who]})}return t.size?_("div",{class:"walks",children:[...t.values()].map(e=>_("span",{style:Nf(n,e.start,e.end),children:[Us(e.who,Me.value)," ",e.who.length>1||e.who.length===Me.value.length&&Me.value.length>1?"walk":"walks"]},e.start))}):null}function Nw({row:n}){let t=Os.value?.loudness,e=Ce.value,i=Uw.value;if(!t||!e||!i.length)return null;let s=[...Array(uu).keys()].map(r=>{let o=Math.floor(e.secondsAt(n.start+r/uu*n.beats)/t.step),a=Math.ceil(e.secondsAt(n.start+(r+1)/uu*n.beats)/t.step),l=Math.max(0,...i.slice(Math.max(o,0),Math.max(a,0)));return`M${r+.5} 10V${(10-9.6*l).toFixed(2)}`});return _("svg",{class:"loudness",viewBox:`0 0 ${uu} 10`,preserveAspectRatio:"none","aria-hidden":"true",children:_("path",{d:s.join("")})})}var Uw=Gn(()=>{let n=Os.value?.loudness.db??[],t=[...n.keys()].sort((i,s)=>n[i]-n[s]),e=new Array(n.length);return t.forEach((i,s)=>e[i]=(s+1)/n.length),e});function Fw({row:n}){let e=Ce.value.beatAt(bn.value);return e<n.start||e>=n.start+n.beats?null:_("b",{class:"head",style:{left:hu(n,e)},"aria-hidden":"true"})}function Ow({row:n}){let t=Ce.value,e=(Hn.value?.entries??[]).flatMap((s,r)=>{if(s.severity==="note"||s.start===null)return[];let o=t.beatAt(s.start);return o>=n.start&&o<n.start+n.beats?[{entry:s,k:r}]:[]}),i=Hn.value?.revision!==Wt.value?.revision;return _("div",{class:i?"margin older":"margin",children:e.map(({entry:s,k:r})=>_(Bw,{entry:s,k:r},r))})}function Bw({entry:n,k:t}){return _("button",{type:"button",class:`remark ${n.severity}`,onClick:()=>{ue.value="findings",qr.value=t,setTimeout(()=>document.getElementById(`entry-${t}`)?.scrollIntoView({block:"nearest"}))},children:[_("b",{children:n.severity==="stop"?"Stop":"Warn"})," ",n.message]})}function Uf(){let n=Qe.value;return n?n.who.flatMap(t=>{let e=Fu(Pa.value.get(t)??[],n.beat);return e&&e.path!==null?[e]:[]}):[]}function kw(n,t){if(!n.target.classList.contains("count"))return;let e=n.ctrlKey||n.metaKey,i=Uf(),r=(e?{c:()=>Zr(i),x:()=>Oa(i),v:()=>Ba(o=>xn(Ce.value,o),ha)}:{Delete:()=>fu(i),Backspace:()=>fu(i),Enter:()=>Un.value=!0," ":()=>Un.value=!0})[n.key];if(r&&Qe.value){n.preventDefault(),r();return}!e&&!n.altKey&&zw(n.key,t)&&n.preventDefault()}async function fu(n){let t=Fa(n).map(e=>e.path);t.length&&await ie(Vu(t),`Deleted: ${n[0].title}.`)}function ha(n){let e=(Wt.value?.blocks??[]).filter(r=>r.entry?.[0]==="timeline"&&r.start>n+1e-6).map(r=>Number(r.entry[1])).filter(Number.isFinite);if(!e.length)return null;let i=Math.min(...e),s=(wt.value?.values?.timeline??[])[i];return s&&("from"in s||"accent"in s)?i:null}function zw(n,t){let e={ArrowLeft:[-1,0],ArrowRight:[1,0],ArrowUp:[0,-1],ArrowDown:[0,1]};if(!t.length||!(n in e||["Home","End","PageUp","PageDown"].includes(n)))return!1;let i=Qe.value??{beat:t[0].start,who:Me.value},s=Math.max(0,t.findIndex(d=>i.beat>=d.start&&i.beat<d.start+d.beats)),r=d=>Uu(d,Me.value,Pa.value),o=d=>d.start+Math.max(1,Math.round(d.beats))-1,a=t[s],l=i.beat,c=Math.max(0,r(a).findIndex(d=>d.who.includes(i.who[0]))),[u,f]=e[n]??[0,0];if(u)l=Math.min(Math.max(l+u,t[0].start),o(t[t.length-1])),a=t.find(d=>l>=d.start&&l<d.start+d.beats)??a,c=Math.max(0,r(a).findIndex(d=>d.who.includes(i.who[0])));else if(f){if(c+=f,c<0||c>=r(a).length){let d=t[s+f];if(!d)return!0;l=Math.min(d.start+(l-a.start),o(d)),a=d,c=f>0?0:r(a).length-1}}else if(n==="Home")l=a.start;else if(n==="End")l=o(a);else{let d=t.filter(h=>h.heads);a=(n==="PageDown"?d.find(h=>h.start>i.beat):[...d].reverse().find(h=>h.start<t[s].start))??a,l=a.start,c=0}return zs.value=!0,Yr({beat:l,who:r(a)[c].who}),!0}function s0(){let n=Qe.value,t=Ce.value,e=ge(null),i=Uf(),s=()=>e.current?.querySelector("form input, .steps button")?.focus({preventScroll:!0});if(xe(()=>{Un.value&&s()},[Un.value,n?.beat,n?.who.join()]),xe(()=>{Un.value&&document.activeElement===document.body&&s()},[i[0]?.path?.join()]),!n||!t||!Un.value)return null;let r=i[0],o=Lf().find(a=>n.beat>=a.start-1e-6&&n.beat<a.start+a.beats-1e-6);return _("section",{ref:e,class:"place","aria-label":"What is danced here",onKeyDown:a=>{a.key==="Escape"&&n0()},children:[_("header",{children:[_("p",{children:[o?`Bar ${o.bar}, count ${Math.floor(n.beat-o.start+1e-6)+1} (${xn(t,n.beat)}) \xB7 `:"",Us(r?[...new Set(i.map(a=>a.who))]:n.who,Me.value)]}),_("button",{type:"button",class:"small",onClick:n0,title:"Close (Escape)",children:"Close"})]}),r?_(Hw,{block:r,blocks:i},r.path.join("/")):_(Vw,{beat:n.beat,who:n.who},`${n.beat} ${n.who.join()}`)]})}function n0(){Un.value=!1,zs.value=!0,document.querySelector(".count.on")?.focus()}function Vw({beat:n,who:t}){let e=Ce.value,[i,s]=It(""),[r,o]=It(Gw(n,t)),[a,l]=It(t),[c,u]=It([]),f=()=>{let d={who:i0(a),from:xn(e,n),pattern:i,beats:r},h=c.find(m=>m.name===i)?.shift;h&&(d.shift=h),ie({do:"put-block",into:["timeline"],block:d,before:ha(n)},`Put: ${i}.`)};return _("form",{onSubmit:d=>{d.preventDefault(),i&&f()},children:[_(r0,{label:"Put a move",value:i,choose:s,who:a,at:n,near:c,found:u}),_(Zw,{label:"For",unit:"beats",value:r,least:1,step:1,set:o}),Me.value.length>1&&_("fieldset",{children:[_("legend",{children:"Danced by"}),Me.value.map(d=>_("label",{children:[_("input",{type:"checkbox",checked:a.includes(d),onChange:h=>l(Me.value.filter(m=>m===d?h.currentTarget.checked:a.includes(m)))})," ",d]},d))]}),_("p",{class:"row",children:[_("button",{type:"submit",class:"main",disabled:!i||!a.length,children:"Put it here"}),_("button",{type:"button",disabled:!a.length,onClick:()=>{ie({do:"put-block",into:["timeline"],before:ha(n),block:{who:i0(a),from:xn(e,n),rest:r}},"Put: a rest.")},children:"Rest here"}),_(qd,{beat:n}),Vs.value&&_("button",{type:"button",onClick:()=>{Ba(d=>xn(e,d),ha)},children:["Paste ",Vs.value.words]})]})]})}var i0=n=>n.length===Me.value.length&&n.length>1?"all":n.length===1?n[0]:n;function Gw(n,t){let e=(Wt.value?.blocks??[]).filter(i=>t.includes(i.who)&&i.path!==null&&i.start>n+1e-6).map(i=>i.start);return Math.max(1,Math.min(8,Math.floor(Math.min(...e,1/0)-n)))}function Hw({block:n,blocks:t}){let e=Ce.value,i=n.entry??n.path,s=n.path[0]==="phrases",[r,o]=It(!0),a=Xw(n),l=s?a.length:1,c=Of(n.path)??{},u=n.end-n.start,f=Number(c.repeat??1)||1,d=(p,v)=>{ie(s&&r&&l>1?{do:"change-here",use:[i],rounds:[qw(n,a)],operation:p}:p,v)},h=n.path,m=p=>d({do:"stretch-block",at:h,beats:p/f},`${n.title}: ${p} beats.`),y=async p=>{let v=xn(e,Ww(i,n)+p),M=Qe.value;await ie({do:"move-block",at:i,start:v},`Moved to ${v}.`)&&(Qe.value={...M,beat:M.beat+p})},g=Number(n.shift??0);return _(ne,{children:[_("h3",{children:n.title}),_("ul",{class:"words",children:n.words.filter(p=>p!==n.title).map(p=>_("li",{children:p},p))}),s&&_("fieldset",{children:[_("legend",{children:["The phrase ",n.phrase," is danced ",l===1?"once":`${l} times`,". Change it"]}),l>1&&_("label",{children:[_("input",{type:"radio",name:"where",checked:r,onChange:()=>o(!0)})," here only"]}),_("label",{children:[_("input",{type:"radio",name:"where",checked:!r||l<2,onChange:()=>o(!1)})," ",l>1?"everywhere":"in the phrase"]})]}),"pattern"in c&&_(Yw,{block:n,change:d,at:h}),_("div",{class:"steps",children:[_("p",{children:["Starts ",n.position,_("button",{type:"button",onClick:()=>{y(-1)},title:s?"The whole entry moves":"A beat earlier",children:"1 beat earlier"}),_("button",{type:"button",onClick:()=>{y(1)},children:"1 beat later"})]}),_("p",{children:["Lasts ",Ff(u),_("button",{type:"button",disabled:u<=1,onClick:()=>m(u-1),children:"1 beat shorter"}),_("button",{type:"button",onClick:()=>m(u+1),children:"1 beat longer"})]}),"pattern"in c&&_("p",{children:["Begins ",g?`${Ff(g)} in`:"at its start",_("button",{type:"button",onClick:()=>d({do:"change-block",at:h,values:{shift:g-.5||null}},"Shifted."),children:"\xBD beat back"}),_("button",{type:"button",onClick:()=>d({do:"change-block",at:h,values:{shift:g+.5||null}},"Shifted."),children:"\xBD beat on"})]})]}),_("p",{class:"row",children:[_("button",{type:"button",onClick:()=>{Zr(t)},children:"Copy"}),_("button",{type:"button",onClick:()=>{Oa(t)},children:"Cut"}),_("button",{type:"button",onClick:()=>{fu(t)},children:s?"Delete the entry":"Delete"})]}),_($w,{entry:i})]})}var Ff=n=>`${Math.round(n*1e3)/1e3} ${Math.abs(n-1)<1e-6?"beat":"beats"}`;function Of(n){let t=wt.value?.values;for(let e of n)t=t?.[e];return t&&typeof t=="object"?t:null}function Ww(n,t){let e=n.join("/"),i=(Wt.value?.blocks??[]).filter(s=>s.who===t.who&&s.entry?.join("/")===e&&s.kind!=="link");return Math.min(t.start,...i.map(s=>s.start))}function Xw(n){let t=n.path.join("/");return(Wt.value?.blocks??[]).filter(e=>e.who===n.who&&e.path?.join("/")===t).sort((e,i)=>e.start-i.start)}function qw(n,t){let e=n.entry?.join("/");return Number(Of(n.entry??[])?.repeat??1)>1?t.filter(s=>s.entry?.join("/")===e).indexOf(n):null}function Yw({block:n,change:t,at:e}){let[i,s]=It(""),[r,o]=It([]);return _("form",{class:"row",onSubmit:a=>{a.preventDefault(),i&&t({do:"change-block",at:e,values:{pattern:i}},`Now ${i}.`)},children:[_(r0,{label:"Dance another move",value:i,choose:s,who:[n.who],at:n.start,near:r,found:o}),_("button",{type:"submit",disabled:!i,children:"Change"})]})}function $w({entry:n}){let t=Of(n);if(!t||n[0]!=="timeline"||Me.value.length<2)return null;let e=t.who==="all"||t.who===void 0?Me.value:Array.isArray(t.who)?t.who:[t.who],i=t.mirror===void 0?[]:Array.isArray(t.mirror)?t.mirror:[t.mirror],s=t.canon?Number(t.canon):0;return e.length<2?null:_("fieldset",{children:[_("legend",{children:"Together"}),_("p",{children:[s?`a canon, ${Ff(s)} apart`:"all at once",_("button",{type:"button",onClick:()=>{ie({do:"set-canon",at:n,beats:s+1},"Canon.")},children:s?"1 beat farther apart":"A canon"}),s>0&&_("button",{type:"button",onClick:()=>{ie({do:"set-unison",at:[n]},"All at once.")},children:"All at once"})]}),_("p",{children:["Mirrored: ",e.map(r=>_("label",{children:[_("input",{type:"checkbox",checked:i.includes(r)||i.includes("all"),onChange:o=>{ie({do:"set-mirror",at:n,who:e.filter(a=>a===r?o.currentTarget.checked:i.includes(a)||i.includes("all"))},"Mirrored.")}})," ",r]},r))]})]})}function Zw({label:n,unit:t,value:e,least:i,step:s,set:r}){return _("label",{class:"stepper",children:[n," ",_("input",{type:"number",min:i,step:s,value:e,onInput:o=>{let a=Number(o.currentTarget.value);a>=i&&r(a)}})," ",t]})}function r0({label:n,value:t,choose:e,who:i,at:s,near:r,found:o}){let[a,l]=It(-1),[c,u]=It(!1),f=i.join();xe(()=>{let g=!0;if(f)return me(`patterns?who=${encodeURIComponent(f)}&at=${s}`).then(p=>g&&o(p.patterns),()=>{}),()=>{g=!1}},[f,s,wt.value?.revision]);let d=r.length?r:ks.value,h=t.toLowerCase().split(/[\s-]+/).filter(Boolean),m=d.filter(g=>h.every(p=>g.name.includes(p))).slice(0,60),y=c&&!(m.length===1&&m[0].name===t);return _("div",{class:"pattern-field",children:[_("label",{children:[n,_("input",{type:"text",role:"combobox","aria-expanded":y,"aria-controls":"patterns","aria-autocomplete":"list","aria-activedescendant":y&&a>=0?`pattern-${a}`:void 0,autocomplete:"off",spellcheck:!1,value:t,placeholder:"its name, or part of it",onClick:()=>u(!0),onBlur:()=>setTimeout(()=>u(!1),150),onInput:g=>{e(g.currentTarget.value),u(!0),l(-1)},onKeyDown:g=>{g.key==="ArrowDown"||g.key==="ArrowUp"?(g.preventDefault(),u(!0),l((a+(g.key==="ArrowDown"?1:m.length-1)+(a<0&&g.key==="ArrowUp"?1:0))%Math.max(1,m.length))):g.key==="Enter"&&y&&m.length&&(a>=0||m.length===1)?(g.preventDefault(),e(m[Math.max(a,0)].name),u(!1)):g.key==="Escape"&&y&&(g.stopPropagation(),u(!1))}})]}),y&&_("ul",{id:"patterns",role:"listbox","aria-label":"Moves",children:[m.map((g,p)=>_("li",{id:`pattern-${p}`,role:"option","aria-selected":p===a,class:p===a?"on":"",onMouseDown:v=>{v.preventDefault(),e(g.name),u(!1)},children:[_("span",{children:g.name})," ",_("small",{children:g.suits?g.words:"not for these props"})]},g.name)),!m.length&&_("li",{class:"none",role:"option","aria-selected":!1,"aria-disabled":"true",children:"no move has that name"})]})]})}var Jw=[["page","Rehearsal page","the show danced, with the song, in one file for any browser"],["counts","Count track","the song with counts and calls, as WAV"],["midi","Cues for light and sound","MIDI"],["captions","Captions","WebVTT, for a video of the rehearsal"],["timetable","Timetable","every change with its time, as CSV and JSON"]],o0=[100,85,70,50];function a0(){let n=Hs.value,t=ge(null);if(Jr(t,n?.state),!wt.value?.readable)return _("p",{class:"quiet",children:"The file cannot be read as a show: mend it under Text, then it can be printed."});let e=n?.state==="working";return _("div",{ref:t,class:"printing",children:[e&&_(Kw,{now:n}),n?.state==="failed"&&_("p",{class:"fault",role:"alert",children:n.error?.message}),n?.state==="done"&&n.made&&_(jw,{now:n}),_("div",{class:"printing",hidden:e,children:[_(e1,{}),_(n1,{})]}),_("p",{class:"quiet",hidden:e,children:["What is printed is the show as it stands on this page, saved or not. The files are put into ",n?.folder??"the folder exports beside the show","."]})]})}function Kw({now:n}){return _("section",{class:"printing","aria-label":"At work",children:[_("h3",{tabIndex:-1,children:n.asked?.what==="rehearsal"?"Making what you rehearse with":"Printing the sheets"}),_(Kr,{now:n}),_("p",{class:"row",children:_("button",{type:"button",onClick:()=>{cn("print/stop")},children:"Give it up"})}),_("p",{class:"quiet",children:"You can go on planning meanwhile: what you change now is not in these files."})]})}function jw({now:n}){let{files:t,ok:e,said:i,older:s}=n.made;return _("section",{class:"made","aria-label":"What was made",children:[_("h3",{tabIndex:-1,children:"Ready"}),e===!1&&_("p",{class:"fault",children:["Do not dance this yet: ",_("button",{type:"button",class:"small",onClick:()=>ue.value="findings",children:"Findings"})," says why, and so does every sheet."]}),e===null&&_("p",{class:"caution",children:"Nothing was checked for these: Findings says whether the show can be danced."}),s&&_("p",{class:"caution",children:"The show has been changed since: what was made is of before."}),n.unsaved&&_("p",{class:"quiet",children:"Made from the show as it stood on this page; it was not saved then."}),_("ul",{children:t.map(r=>_("li",{children:[Qw(r)?_("a",{href:r.address,target:"_blank",rel:"noopener",children:r.name}):_("span",{children:r.name}),_("small",{children:t1(r.bytes)}),_("a",{class:"save",href:`${r.address}?save`,download:r.name,"aria-label":`Download ${r.name}`,children:"Download"})]},r.name))}),i.map(r=>_("p",{class:"quiet",children:Ws(r)},r)),_("p",{class:"quiet",children:["They lie in ",n.folder,"."]})]})}var Qw=n=>/\.(pdf|html|wav)$/.test(n.name),t1=n=>n<1e6?`${Math.max(1,Math.round(n/1e3))} kB`:`${(n/1e6).toFixed(1)} MB`;function e1(){let[n,t]=It([]),[e,i]=It("pack"),[s,r]=It([]),[o,a]=It([]),[l,c]=It("a4"),[u,f]=It("");xe(()=>{me("printable").then(m=>t(m.kinds),()=>{})},[]);let d=e==="some"&&!s.length&&!o.length,h=()=>{cn("sheets",{everything:e==="all",only:e==="some"?s:[],people:e==="some"?o:[],paper:l,since:u.trim()||null})};return _("form",{class:"printed",onSubmit:m=>{m.preventDefault(),d||h()},children:[_("h3",{tabIndex:-1,children:"Sheets to print"}),_("fieldset",{children:[_("legend",{children:"Which"}),_("label",{children:[_("input",{type:"radio",name:"which",checked:e==="pack",onChange:()=>i("pack")})," what is carried on the night"]}),_("label",{children:[_("input",{type:"radio",name:"which",checked:e==="all",onChange:()=>i("all")})," everything"]}),_("label",{children:[_("input",{type:"radio",name:"which",checked:e==="some",onChange:()=>i("some")})," what I choose"]})]}),e==="some"&&_(ne,{children:[_("fieldset",{class:"kinds",children:[_("legend",{children:"Kinds (none: every kind)"}),!n.length&&_("span",{class:"quiet",children:"The kinds are being listed \u2026"}),n.map(m=>_("label",{children:[_("input",{type:"checkbox",checked:s.includes(m.name),onChange:y=>r(Bf(s,m.name,y.currentTarget.checked))})," ",_("span",{children:[_("b",{children:m.name.replaceAll("-"," ")}),", for ",m.reader,_("small",{children:m.holds})]})]},m.name))]}),_(l0,{legend:"For (nobody: for all)",chosen:o,choose:a,crew:!0})]}),_("p",{class:"row",children:[_("label",{children:["Paper ",_("select",{value:l,onChange:m=>c(m.currentTarget.value),children:[_("option",{value:"a4",children:"A4"}),_("option",{value:"letter",children:"Letter"})]})]}),_("label",{children:["Mark what has changed since ",_("input",{type:"text",value:u,placeholder:"an earlier show file, beside this one",onInput:m=>f(m.currentTarget.value)})]})]}),_("p",{class:"row",children:_("button",{type:"submit",class:"main",disabled:d,children:"Make the sheets"})})]})}function n1(){let[n,t]=It(["page","counts"]),[e,i]=It([100]),[s,r]=It("pitched"),[o,a]=It([]),[l,c]=It(!1),[u,f]=It(!0),[d,h]=It(!1),m=n.includes("counts"),y=n.length>0&&(!m||e.length>0),g=()=>{cn("rehearsal",{parts:n,speeds:(m?e:[100]).map(p=>p/100),counts:s,people:o,clicks_only:l,no_calls:!u,split:d})};return _("form",{class:"printed",onSubmit:p=>{p.preventDefault(),y&&g()},children:[_("h3",{children:"To rehearse with, and for other programs"}),_("fieldset",{class:"kinds",children:[_("legend",{children:"What"}),Jw.map(([p,v,M])=>_("label",{children:[_("input",{type:"checkbox",checked:n.includes(p),onChange:b=>t(Bf(n,p,b.currentTarget.checked))})," ",_("span",{children:[_("b",{children:v}),_("small",{children:M})]})]},p))]}),m&&_("details",{children:[_("summary",{children:"How the count track sounds"}),_("fieldset",{children:[_("legend",{children:"Speeds, at the same pitch"}),o0.map(p=>_("label",{children:[_("input",{type:"checkbox",checked:e.includes(p),onChange:v=>i(o0.filter(M=>M===p?v.currentTarget.checked:e.includes(M)))})," ",p," %"]},p))]}),_("p",{class:"row",children:_("label",{children:["The last four beats before a change are ",_("select",{value:s,onChange:p=>r(p.currentTarget.value),children:[_("option",{value:"pitched",children:"pitched clicks"}),_("option",{value:"spoken",children:"spoken"}),_("option",{value:"none",children:"not counted"})]})]})}),_("fieldset",{children:[_("legend",{children:"In it"}),_("label",{children:[_("input",{type:"checkbox",checked:!l,onChange:p=>c(!p.currentTarget.checked)})," the song"]}),_("label",{children:[_("input",{type:"checkbox",checked:u,onChange:p=>f(p.currentTarget.checked)})," three notes before each section"]}),_("label",{children:[_("input",{type:"checkbox",checked:d,onChange:p=>h(p.currentTarget.checked)})," song left, counts right"]})]}),_(l0,{legend:"Changes of (nobody: of all)",chosen:o,choose:a})]}),_("p",{class:"row",children:_("button",{type:"submit",class:"main",disabled:!y,children:"Make these"})})]})}function l0({legend:n,chosen:t,choose:e,crew:i=!1}){let s=wt.value?.values,r=[...s?.cast??[],...i?s?.crew??[]:[]].map(o=>o.name).filter(Boolean);return _("fieldset",{children:[_("legend",{children:n}),r.map(o=>_("label",{children:[_("input",{type:"checkbox",checked:t.includes(o),onChange:a=>e(Bf(t,o,a.currentTarget.checked))})," ",o]},o))]})}var Bf=(n,t,e)=>e?[...n.filter(i=>i!==t),t]:n.filter(i=>i!==t);var i1=.05,s1=.5,c0=.05;function r1(n){let t=[],e=[],i=([d,h])=>{t.push(d),e.push(h)};n.place.outline.forEach(i),n.place.audience.forEach(d=>d.line.forEach(i)),n.crew.forEach(d=>i(d.at)),n.place.extinguishers.forEach(i),n.place.fuel&&i(n.place.fuel);for(let d of Object.values(n.formations))Object.values(d.spots).forEach(i);if(!t.length)return{x0:-5,x1:5,y0:-5,y1:8};let s=(d,h,m)=>d.filter(y=>y>h&&y<m),r=n.place.outline.length?n.place.outline:Object.values(n.formations).flatMap(d=>Object.values(d.spots).map(h=>[h[0],h[1]])),o=r.map(d=>d[0]),a=r.map(d=>d[1]),[l,c,u,f]=[Math.min(...o)-5,Math.max(...o)+5,Math.min(...a)-7,Math.max(...a)+6];return{x0:Math.min(...o,...s(t,l,c))-.8,x1:Math.max(...o,...s(t,l,c))+.8,y0:Math.min(...a,...s(e,u,f))-.8,y1:Math.max(...a,...s(e,u,f))+.8}}function o1(n,t){return[...n.standings].reverse().find(e=>e.walk<=t+1e-6)??n.standings[0]??null}function u0(){let n=Wt.value,t=Ce.value,e=ge(null),[,i]=It(0),[s,r]=It(null),o=ge(new Map),a=ge(Promise.resolve()),l=ge(0);if(Ra.value&&!l.current&&o.current.clear(),!n||!t)return _("p",{class:"quiet",children:"There is no stage to show yet."});let c=t.beatAt(bn.value),u=o1(n,c);if(!u)return _("p",{class:"quiet",children:"The file says nothing about where anybody stands."});let f=r1(n),d=(v,M)=>[v-f.x0,f.y1-M],h=v=>v.map(([M,b])=>d(M,b).map(E=>E.toFixed(2)).join(",")).join(" "),m=Me.value.flatMap(v=>{let M=u.spots[v];if(!M)return[];let b=s?.who===v?s.at:o.current.get(`${u.formation} ${v}`)??[M[0],M[1]];return[[v,[b[0],b[1],M[2]]]]}),y=a1(m,n),g=v=>{let M=e.current.getScreenCTM().inverse(),b=new DOMPoint(v.clientX,v.clientY).matrixTransform(M);return[du(b.x+f.x0),du(f.y1-b.y)]},p=(v,M)=>{let b=`${u.formation} ${v}`;o.current.set(b,M),l.current+=1,i(E=>E+1),a.current=a.current.then(async()=>{o.current.get(b)===M&&!await ie({do:"move-spot",formation:u.formation,who:v,at:M},`${v} stands at ${M[0]}, ${M[1]} in ${u.formation}.`)&&o.current.delete(b),l.current-=1,i(A=>A+1)})};return _("figure",{class:"plan",children:[_("figcaption",{children:[_("b",{children:u.formation}),", from ",u.position,n.formations[u.formation]?.used.length>1&&` (danced in ${n.formations[u.formation].used.length} times: all move with it)`]}),_("svg",{ref:e,viewBox:`0 0 ${(f.x1-f.x0).toFixed(2)} ${(f.y1-f.y0).toFixed(2)}`,role:"group","aria-label":`The stage from above, ${u.formation}; the audience is below`,onPointerMove:v=>s&&r({...s,at:g(v)}),onPointerUp:()=>{if(!s)return;let v=u.spots[s.who];v&&Math.hypot(v[0]-s.at[0],v[1]-s.at[1])>.02&&p(s.who,s.at),r(null)},onPointerCancel:()=>r(null),children:[_("polygon",{class:"floor",points:h(n.place.outline)}),n.place.holes.map((v,M)=>_("polygon",{class:"hole",points:h(v)},M)),n.place.audience.map(v=>_("polyline",{class:"audience",points:h(v.line)},v.name)),n.place.scenery.map(v=>_("polygon",{class:"thing",points:h(v.outline),children:_("title",{children:v.name})},v.name)),n.place.extinguishers.map((v,M)=>_(kf,{at:d(...v),sign:"E",words:"extinguisher"},M)),n.place.fuel&&_(kf,{at:d(...n.place.fuel),sign:"F",words:"fuel point"}),n.crew.map(v=>_(kf,{at:d(...v.at),sign:v.name[0],words:`${v.name}, ${v.duty}`},v.name)),y.map(([v,M,b])=>{let[E,A]=d(v[0],v[1]),[x,T]=d(M[0],M[1]);return _("g",{class:"close",children:[_("line",{x1:E,y1:A,x2:x,y2:T}),_("text",{x:(E+x)/2,y:(A+T)/2-.15,children:[b.toFixed(2)," m"]})]},`${E} ${A} ${x} ${T}`)}),m.map(([v,[M,b,E]])=>{let[A,x]=d(M,b),T=n.reach[v]??1,D=E*Math.PI/180;return _("g",{class:s?.who===v?"spot dragged":"spot",children:[_("circle",{class:"reach",cx:A,cy:x,r:T}),_("line",{class:"facing",x1:A,y1:x,x2:A+.55*Math.sin(D),y2:x+.55*Math.cos(D)}),_("circle",{class:"body",cx:A,cy:x,r:.34,tabindex:0,role:"button","aria-label":`${v}, ${M.toFixed(2)} across, ${b.toFixed(2)} upstage; arrow keys move by 5 cm, with Shift by 50 cm`,onPointerDown:R=>{R.preventDefault(),e.current.setPointerCapture(R.pointerId),r({who:v,at:[M,b]})},onKeyDown:R=>{let P=R.shiftKey?s1:i1,F={ArrowLeft:[-P,0],ArrowRight:[P,0],ArrowUp:[0,P],ArrowDown:[0,-P]};F[R.key]&&(R.preventDefault(),p(v,[du(M+F[R.key][0]),du(b+F[R.key][1])]))}}),_("text",{x:A,y:x+.95,children:v})]},v)})]}),_("p",{class:"quiet",children:s?`${s.who}: ${s.at[0].toFixed(2)} m across, ${s.at[1].toFixed(2)} m upstage. Distances are between spots, as drawn; the checks look at every moment when you let go.`:"Thin circles: how far body, prop and flame reach. The audience is below."})]})}var du=n=>Math.round(Math.round(n/c0)*c0*100)/100;function a1(n,t){return n.flatMap(([e,i],s)=>n.slice(s+1).flatMap(([r,o])=>{let a=Math.hypot(i[0]-o[0],i[1]-o[1]);return a<(t.reach[e]??1)+(t.reach[r]??1)?[[i,o,a]]:[]}))}function kf({at:[n,t],sign:e,words:i}){return _("g",{class:"mark",children:[_("title",{children:i}),_("rect",{x:n-.28,y:t-.28,width:.56,height:.56}),_("text",{x:n,y:t+.16,children:e})]})}function h0(){let n=wt.value,t=n.text.includes(`\r
`),e=n.text.replaceAll(`\r
`,`
`),{text:i,based:s,revision:r}=us.value??{text:e,based:e,revision:n.revision},o=f=>us.value=f===s?null:{text:f,based:s,revision:r},a=ge(null),l=i!==s,c=s!==e,u=(f,d)=>{let m=i.split(`
`).slice(0,f-1).reduce((y,g)=>y+g.length+1,0)+d-1;a.current?.focus(),a.current?.setSelectionRange(m,m+1)};return _("div",{class:"text",children:[n.faults.map(f=>_("p",{class:"fault",children:[f.message," ",f.line!==null&&_("button",{type:"button",class:"small",onClick:()=>u(f.line,f.column??1),children:["Go to line ",f.line]})]},f.message)),_("textarea",{ref:a,spellcheck:!1,"aria-label":`The text of ${n.file}`,value:i,onInput:f=>o(f.currentTarget.value)}),c&&l&&_("p",{class:"fault",children:"The show was changed since you began to type: both changes are put together if they touch different places."}),_("p",{class:"row",children:[_("button",{type:"button",class:"main",disabled:!l,onClick:()=>{ie({do:"replace-text",text:t?i.replaceAll(`
`,`\r
`):i},"The text is taken.",r).then(f=>f&&(us.value=null))},children:"Take this text"}),_("button",{type:"button",disabled:!l,onClick:()=>us.value=null,children:"Back to the show's"})]})]})}function f0(){let n=wt.value,t=ge(null);if(xe(()=>t.current?.showModal(),[n?.outside!==null]),!n?.outside)return null;let e=i=>{ni(()=>je("outside",{take:i}),i==="mine"?"Yours is kept.":"The other one is taken.")};return _("dialog",{ref:t,class:"outside","aria-label":"The file was changed elsewhere",onCancel:i=>i.preventDefault(),children:[_("h2",{children:"The file was changed elsewhere"}),_("p",{children:n.outside.message}),_("div",{class:"both",children:[_("div",{children:[_("h3",{children:"Here"}),_("pre",{tabIndex:0,children:n.text}),_("button",{type:"button",class:"main",onClick:()=>e("mine"),children:"Keep this one"})]}),_("div",{children:[_("h3",{children:"In the file"}),_("pre",{tabIndex:0,children:n.outside.text}),_("button",{type:"button",onClick:()=>e("theirs"),children:"Take this one"})]})]}),_("p",{class:"quiet",children:"Neither is lost: what is not kept can be had back with Undo."})]})}var fa=Zt(null),pu=Zt(!1),Lr=[["The sheet","Your song stands here in eights, as on a count sheet. A bar across the counts is a move, a hatched one the link to the next. Click a count, or walk there with the arrow keys and press Enter, to put a move or to change the one that is there.",".left"],["A routine to begin with","Under Draft you get a proposal: moves that everybody can dance at this tempo, checked as a whole. You see it before it goes into the show, and one Undo takes it out again.","#tab-draft"],["Hear it, see it","The space bar plays the song. Under Dance the show is danced; under Stage you drag everybody to where they stand.",".transport"],["What stands against it","After every change the show is looked at anew: reach, distances, walks, fire. The answer stands up here, each finding beside its row and under Findings, often with a mend to try.",".verdict"],["Save and print","Nothing that you do is lost, and Undo goes back to the beginning. Save writes the file. Under Print are the sheets for the night and the page to rehearse with.",".tools"]];async function m0(){let{seen:n}=await me("tour");n||(fa.value=0)}function g0(){pu.value=!0,fa.value=0}function d0(){fa.value=null,je("tour",{}).catch(()=>{}),pu.value&&document.getElementById("call-tour")?.focus()}function p0(n){pu.value=!0,fa.value=n}function _0(){let n=fa.value,t=ge(null);if(xe(()=>{if(n===null)return;let s=document.querySelector(Lr[n][2]);return s?.classList.add("toured"),pu.value&&t.current?.focus(),()=>s?.classList.remove("toured")},[n]),n===null)return null;let[e,i]=Lr[n];return _("section",{class:"tour","aria-labelledby":"tour-title",onKeyDown:s=>{s.key==="Escape"&&d0()},children:[_("div",{children:[_("h2",{id:"tour-title",ref:t,tabIndex:-1,"aria-describedby":"tour-words",children:[e," ",_("small",{children:[n+1," of ",Lr.length]})]}),_("p",{id:"tour-words",children:i})]}),_("p",{class:"row",children:[n>0&&_("button",{type:"button",onClick:()=>p0(n-1),children:"Back"}),n<Lr.length-1&&_("button",{type:"button",class:"main",onClick:()=>p0(n+1),children:"Next"}),_("button",{type:"button",class:n===Lr.length-1?"main":"",onClick:d0,children:n===Lr.length-1?"Done":n?"End the tour":"No tour"})]})]})}function v0(){let n=wt.value;return _("header",{class:"top",children:[_("h1",{children:Wt.value?.title??n?.file??"\u2026"}),_("p",{class:"file",children:n?`${n.file} \xB7 ${n.saved?"saved":"not saved yet"}`:""}),_(l1,{}),_("div",{class:"tools",children:[_("button",{type:"button",disabled:!n?.undo,onClick:()=>{La()},title:n?.undo?`Take back: ${n.undo} (Ctrl + Z)`:"Nothing to take back",children:"Undo"}),_("button",{type:"button",disabled:!n?.redo,onClick:()=>{$r()},title:n?.redo?`Do again: ${n.redo} (Ctrl + Y)`:"Nothing to do again",children:"Redo"}),_("button",{type:"button",class:n&&!n.saved?"main":"",disabled:!n||n.saved,onClick:()=>{Na()},title:"Write the file (Ctrl + S)",children:"Save"}),_("button",{type:"button",id:"call-tour",onClick:g0,children:"Tour"})]}),_("p",{class:"unseen",role:"status","aria-live":"polite",children:ei.value})]})}function l1(){let n=wt.value,t=Bs.value,e=Hn.value;if(!n)return _("p",{class:"verdict",children:"opening \u2026"});if(!n.readable)return _("p",{class:"verdict stop",children:"The file cannot be read: see Text"});if(Wn.value)return _("p",{class:"verdict stop",title:Wn.value,children:"Cannot be danced as it is written"});let i=t!==null&&t.revision===n.revision&&!Wr.value;if(i&&t.error)return _("p",{class:"verdict stop",title:t.error.message,children:["A check broke off: ",t.error.message]});let s=t?.counts??{stop:0,warn:0,note:0},r=i?t.open?.length??null:null,o=[s.stop?`${s.stop} stop`:"",s.warn?`${s.warn} warn`:""].filter(Boolean).join(", "),a=i&&r===1&&t.open?.[0]==="mends";if(!a&&(!i||r!==0||!t.complete||e?.revision!==n.revision))return _("p",{class:"verdict looking",children:[i&&t.hearing?"hearing the song":r===null?"looking again":`looking: ${r} ${r===1?"check":"checks"} left`,o&&i?`, so far ${o}`:"",i&&t.share!==null&&_("progress",{max:1,value:t.share,"aria-label":t.words??"looking"})]});let l=a?"; mends are being sought":"";return s.stop?_("p",{class:"verdict stop",children:["Do not dance yet: ",o,l]}):s.warn?_("p",{class:"verdict warn",children:["Dance with care: ",o,l]}):_("p",{class:"verdict good",children:"Clear, of what is looked at"})}function zf(){return _("div",{class:"notices",role:"status",children:[nn.value&&_("p",{class:"refused",role:"alert",children:[nn.value.words," ",nn.value.anyway&&_("button",{type:"button",class:"small",onClick:nn.value.anyway,children:"Do it all the same"})," ",_("button",{type:"button",class:"small",onClick:()=>nn.value=null,children:"Close"})]}),ti.value&&_("p",{class:"warn",children:ti.value}),wt.value?.kept.message&&_("p",{class:"warn",children:wt.value.kept.message}),Fs.value.map(n=>_("p",{class:n.warn?"warn":"",children:n.words},n.id))]})}var Vf={findings:"Findings",stage:"Stage",dance:"Dance",draft:"Draft",forms:"Show",print:"Print",text:"Text"};function c1(){let n=wt.value;return n?n.text.trim()?_(ne,{children:[_("a",{class:"skip",href:"#side",children:"Skip the sheet"}),_(v0,{}),_(_0,{}),_("main",{children:[_("section",{class:"left","aria-label":"The sheet",children:[Wn.value&&n.readable&&_("p",{class:"fault",children:Wn.value}),_(Qd,{}),_(Yd,{}),Wt.value?_(Qg,{}):_("p",{class:"quiet",children:n.readable?Wn.value?"":"The show is being staged \u2026":"The file cannot be read as a show: mend it under Text."})]}),_("aside",{id:"side",class:"side",children:[_(s0,{}),_("div",{class:"tabs",role:"tablist","aria-label":"Beside the sheet",onKeyDown:h1,children:Object.keys(Vf).map(t=>_("button",{id:`tab-${t}`,type:"button",role:"tab","aria-selected":ue.value===t,"aria-controls":"panel",tabIndex:ue.value===t?0:-1,onClick:()=>ue.value=t,children:[Vf[t],t==="findings"&&_(u1,{})]},t))}),_("div",{id:"panel",class:"panel",role:"tabpanel",tabIndex:0,"aria-labelledby":`tab-${ue.value}`,children:[ue.value==="findings"&&_(Yg,{}),ue.value==="stage"&&_(u0,{}),ue.value==="dance"&&_(Xg,{}),ue.value==="draft"&&_(Wd,{}),ue.value==="forms"&&_(Kg,{}),ue.value==="print"&&_(a0,{}),ue.value==="text"&&_(h0,{})]})]})]}),_(qg,{}),_(zf,{}),_(f0,{}),_(jg,{})]}):_(ne,{children:[_(Kd,{}),_(zf,{})]}):_("main",{class:"opening",children:_("p",{children:ti.value??"Opening the show \u2026"})})}function u1(){let n=(Hn.value?.entries??[]).filter(t=>t.severity!=="note").length;return n?_("b",{class:"number",children:n}):null}function h1(n){let t=Object.keys(Vf),e={ArrowLeft:-1,ArrowRight:1}[n.key];e&&(n.preventDefault(),ue.value=t[(t.indexOf(ue.value)+e+t.length)%t.length],setTimeout(()=>document.getElementById(`tab-${ue.value}`)?.focus()))}addEventListener("keydown",n=>{let t=n.target,e=t.matches("textarea, input:not([type=range]):not([type=checkbox]):not([type=radio])"),i=n.ctrlKey||n.metaKey,s=n.key.toLowerCase();i&&s==="s"?(n.preventDefault(),Na()):i&&!e&&s==="z"?(n.preventDefault(),n.shiftKey?$r():La()):i&&!e&&s==="y"?(n.preventDefault(),$r()):!i&&!e&&n.key===" "&&!t.matches("button, input, summary")&&(n.preventDefault(),vn.toggle())});addEventListener("beforeunload",n=>{(wt.value&&!wt.value.saved&&wt.value.autosave==="journal"||us.value)&&!ti.value&&n.preventDefault()});async function f1(){try{await fd(),await Da()}catch(n){ti.value=n instanceof Ke&&n.status===403?"This address has lost its key: open the page again from the terminal, where sequencer open printed it.":String(n instanceof Error?n.message:n);return}wt.value.readable||(ue.value="text"),Ua(),ku(),zu().catch(()=>{}),ka().catch(()=>{}),m0().catch(()=>{}),me("patterns").then(n=>ks.value=n.patterns,()=>{});for(let n=0;n<5;){try{await md((t,e)=>{n=0,t==="end"&&(ti.value=e.message),t==="errand"&&(e.kind==="begin"?Jd(e):Gd(e)),Vd(t,e)})}catch{n+=1}if(ti.value)return;n+=1,await new Promise(t=>setTimeout(t,500*n))}ti.value="The program behind this page has ended. Run sequencer open again: nothing is lost."}hd(_(c1,{}),document.getElementById("page"));f1();})();
